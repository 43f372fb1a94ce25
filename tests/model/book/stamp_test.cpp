#include "model/book/stamp.h"

#include "model/resolve/resolve.h"

#include "tests/model/book/book_job.h"

#include <catch2/catch.hpp>

namespace {

model::BookStamps stamps_of(const model::Project& project) {
    return model::book_stamps(project, tests::book_catalogue(),
                              model::resolve(project, tests::book_catalogue()));
}

std::vector<std::string> changed_since(const model::BookStamps& printed,
                                       const model::Project& project) {
    const auto resolved = model::resolve(project, tests::book_catalogue());
    std::vector<std::string> names;
    for (const auto mark :
         model::changed_marks(printed.marks, project, tests::book_catalogue(), resolved))
        names.push_back(resolved.marks[mark].name);
    return names;
}

}  // namespace

TEST_CASE("stamps are the same with every compiler", "[model][book][stamp]") {
    // Worked out apart from this program, from the published constants of FNV-1a.
    CHECK(model::stamp_of("") == "Q5M-GYN");
    CHECK(model::stamp_of("a") == "YD7-XRX");
}

TEST_CASE("nothing has changed since a moment ago", "[model][book][stamp]") {
    for (const auto& name : tests::sample_names()) {
        const auto project = tests::sample(name);
        CHECK(changed_since(stamps_of(project), project).empty());
    }
}

TEST_CASE("fewer fasteners change the marks that are drilled anew, and not for good",
          "[model][book][stamp]") {
    const auto before = tests::sample("tool_cabinet.json");
    auto after = before;
    after.shop.per_lap = 1;
    const auto printed = stamps_of(before);
    CHECK_FALSE(changed_since(printed, after).empty());
    CHECK(stamps_of(after).stamp != printed.stamp);
    CHECK(changed_since(printed, before).empty());
}

TEST_CASE("a new name changes the book's stamp, but no mark's", "[model][book][stamp]") {
    const auto before = tests::sample("tool_cabinet.json");
    auto after = before;
    after.name = "Another name";
    after.note += " and a note";
    CHECK(stamps_of(after).stamp != stamps_of(before).stamp);
    CHECK(stamps_of(after).marks == stamps_of(before).marks);
}

TEST_CASE("marks that are no more are told", "[model][book][stamp]") {
    const auto project = tests::sample("parts_box.json");
    auto printed = stamps_of(project);
    printed.marks.push_back({"Z99", "000-000"});
    const auto resolved = model::resolve(project, tests::book_catalogue());
    CHECK(model::marks_gone(printed.marks, resolved) == std::vector<std::string>{"Z99"});
}

TEST_CASE("stamps come back from their file", "[model][book][stamp]") {
    auto stamps = stamps_of(tests::sample("parts_box.json"));
    stamps.project = "a \"name\"\n\xC3\xBC";
    const auto read = model::read_stamps(model::stamps_text(stamps));
    REQUIRE(read);
    CHECK(*read == stamps);
    const auto none = model::read_stamps(model::stamps_text({"", "", {}}));
    REQUIRE(none);
    CHECK(none->marks.empty());
}

TEST_CASE("what is no file of stamps is refused", "[model][book][stamp]") {
    for (const std::string text :
         {"", "nonsense", "[]", "{}", R"({"marks": {"A1": "x"}})", R"({"marks": [{"mark": "A1"}]})",
          R"({"marks": [3]})", R"({"marks": [{"mark": 1, "stamp": "x"}]})"}) {
        CAPTURE(text);
        CHECK_FALSE(model::read_stamps(text));
    }
}

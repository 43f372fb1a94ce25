#include "model/book/stamp.h"

#include "model/book/mark_pages.h"
#include "model/project/edit.h"
#include "model/resolve/resolve.h"

#include "tests/model/book/book_job.h"
#include "tests/model/book/texts_on_page.h"

#include <catch2/catch.hpp>

#include <functional>
#include <map>

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

// ---- what the page of a mark prints -------------------------------------------------------------

namespace {

// The words of each mark's drawings, both hands together: as its pages print them.
std::map<std::string, std::string> pages_of_marks(const model::Project& project) {
    const auto resolved = model::resolve(project, tests::book_catalogue());
    constexpr double name_size = 11.0;  // of the mark's name, which its drawing begins with
    std::map<std::string, std::string> words;
    std::string mark;
    for (const auto& page :
         model::mark_pages(project, tests::book_catalogue(), resolved, engine::Paper::a4)) {
        for (const auto& text : tests::texts_on(page)) {
            if (text.lettering.size == name_size) mark = text.text;
            words[mark] += text.text + "|";
        }
    }
    return words;
}

std::map<std::string, std::string> stamps_by_mark(const model::Project& project) {
    std::map<std::string, std::string> stamps;
    for (const auto& [mark, stamp] : stamps_of(project).marks) stamps[mark] = stamp;
    return stamps;
}

struct Edited {
    const char* what;
    std::function<void(model::Project&)> change;
};

void apply_to(model::Project& project, const model::Edit& edit) {
    auto next = model::apply(project, edit);
    if (!next) FAIL(engine::to_text(next.error()));
    project = std::move(next).value();
}

// How many marks that both have print something else after the edit; each of them, and no other,
// has another stamp.
std::size_t check_edit(const model::Project& before, const Edited& edit) {
    CAPTURE(edit.what);
    auto after = before;
    edit.change(after);
    const auto printed = pages_of_marks(before);
    const auto prints = pages_of_marks(after);
    const auto old_stamps = stamps_by_mark(before);
    const auto new_stamps = stamps_by_mark(after);
    std::size_t changed = 0;
    for (const auto& [mark, words] : printed) {
        if (prints.count(mark) == 0) continue;
        CAPTURE(mark, words, prints.at(mark));
        const bool is_other = prints.at(mark) != words;
        CHECK((new_stamps.at(mark) != old_stamps.at(mark)) == is_other);
        changed += is_other ? 1 : 0;
    }
    return changed;
}

}  // namespace

TEST_CASE("whatever the page of a mark prints changes its stamp", "[model][book][stamp]") {
    const auto before = tests::sample("tool_cabinet.json");
    const std::vector<Edited> edits{
        {"a dimension", [](auto& it) { it.dimensions[0].formula = "47"; }},
        {"fasteners in a lap", [](auto& it) { it.shop.per_lap = 1; }},
        {"edge distance", [](auto& it) { it.shop.edge_distance = 2.5; }},
        {"drills at hand",
         [](auto& it) {
             it.shop.drills = {"1/8", "5/32", "3/16", "1/4"};
         }},
        {"the fastener", [](auto& it) { it.shop.fastener = "blind rivet 5/32"; }},
        {"the recipe", [](auto& it) { it.shop.recipe = "flush"; }},
        {"the alloy", [](auto& it) { it.stock[0].alloy = "6061-T6"; }},
        {"the section", [](auto& it) { it.stock[0].section = "angle 1 x 1 x 3/16"; }},
        {"the unit", [](auto& it) { it.shown.form = engine::TapeForm::feet_inches; }},
        {"a frame's name", [](auto& it) { it.frames[0].name = "another cabinet"; }},
        {"a second frame",
         [](auto& it) {
             apply_to(it, model::CopyFrame{.frame = "tool cabinet", .copy = "second"});
         }},
    };
    for (const auto& edit : edits) {
        CAPTURE(edit.what);
        CHECK(check_edit(before, edit) > 0);
    }
}

TEST_CASE("what the page of a mark does not print leaves its stamp", "[model][book][stamp]") {
    const auto before = tests::sample("tool_cabinet.json");
    const std::vector<Edited> edits{
        {"the project's name", [](auto& it) { it.name = "Another name"; }},
        {"a note", [](auto& it) { it.note += " and a note"; }},
        {"the saw's kerf", [](auto& it) { it.shop.kerf = "1/8 in"; }},
        {"tax", [](auto& it) { it.shop.tax_percent = 19.0; }},
        {"a bar's price", [](auto& it) { it.stock[0].bars[0].price = 99.0; }},
        {"an offcut", [](auto& it) { it.stock[0].offcuts.clear(); }},
        {"spare fasteners", [](auto& it) { it.shop.spare_percent = 50.0; }},
        {"where it stands", [](auto& it) { it.frames[0].origin[1] = "20"; }},
        {"a dimension's note", [](auto& it) { it.dimensions[0].note = "measured anew"; }},
    };
    for (const auto& edit : edits) CHECK(check_edit(before, edit) == 0);
}

TEST_CASE("a mark that gains its first opposite hand is told as changed", "[model][book][stamp]") {
    std::size_t gained = 0;
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const auto before = tests::sample(name);
        const auto copied = model::apply(
            before, model::CopyFrame{
                        .frame = before.frames[0].name, .copy = "mirrored", .is_mirrored = true});
        if (!copied) continue;
        const auto was = model::resolve(before, tests::book_catalogue());
        const auto is = model::resolve(*copied, tests::book_catalogue());
        const auto changed = changed_since(stamps_of(before), *copied);
        for (const auto& mark : was.marks) {
            const auto now = std::ranges::find(is.marks, mark.name, &model::Mark::name);
            if (now == is.marks.end() || mark.opposite > 0 || now->opposite == 0) continue;
            ++gained;
            CAPTURE(mark.name);
            CHECK(std::ranges::find(changed, mark.name) != changed.end());
        }
    }
    CHECK(gained > 5);
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

TEST_CASE("stamps that another version of the program made are not compared",
          "[model][book][stamp]") {
    const auto text = model::stamps_text(stamps_of(tests::sample("parts_box.json")));
    const auto now = "\"stamp_making\": " + std::to_string(model::stamp_making);
    const auto at = text.find(now);
    REQUIRE(at != std::string::npos);
    for (const std::string made : {"\"note\": 1", "\"stamp_making\": 1", "\"stamp_making\": \"2\"",
                                   "\"stamp_making\": 99"}) {
        CAPTURE(made);
        auto other = text;
        other.replace(at, now.size(), made);
        const auto read = model::read_stamps(other);
        REQUIRE_FALSE(read);
        CHECK_THAT(engine::to_text(read.error()), Catch::Contains("print the book anew"));
    }
}

TEST_CASE("what is no file of stamps is refused", "[model][book][stamp]") {
    for (const std::string text :
         {"", R"({"stamp_making": 2})", "nonsense", "[]", "{}", R"({"marks": {"A1": "x"}})",
          R"({"marks": [{"mark": "A1"}]})", R"({"marks": [3]})",
          R"({"marks": [{"mark": 1, "stamp": "x"}]})"}) {
        CAPTURE(text);
        CHECK_FALSE(model::read_stamps(text));
    }
}

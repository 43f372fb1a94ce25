#include "tests/editor/command_run.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

using tests::run;

namespace {

namespace fs = std::filesystem;

std::string bytes_of(const fs::path& file) {
    std::ifstream in{file, std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
}

const std::string sample = BARWRIGHT_SAMPLES "/parts_box.json";

}  // namespace

TEST_CASE("the shop book is written on every paper, twice the same", "[editor][command line]") {
    const tests::ScratchFolder scratch{"book_every"};
    for (const auto* paper : {"a4", "a3", "Letter", "TABLOID"}) {
        CAPTURE(paper);
        const auto file = scratch.path / (std::string(paper) + ".pdf");
        const auto first = run({"book", sample, "--out", file.string(), "--paper", paper});
        CAPTURE(first.out, first.err);
        CHECK(first.status == 0);
        const auto bytes = bytes_of(file);
        CHECK(bytes.substr(0, 5) == "%PDF-");
        CHECK(run({"book", sample, "--out", file.string(), "--paper", paper}).status == 0);
        CHECK(bytes_of(file) == bytes);
    }
}

TEST_CASE("the stamps beside a book tell that nothing has changed, or which marks have",
          "[editor][command line]") {
    const tests::ScratchFolder scratch{"book_since"};
    const auto book = (scratch.path / "box.pdf").string();
    const auto stamps = (scratch.path / "box.stamps.json").string();
    REQUIRE(run({"book", sample, "--out", book}).status == 0);
    REQUIRE(fs::exists(stamps));
    const auto changed = (scratch.path / "changed.pdf").string();
    const auto same = run({"book", sample, "--out", changed, "--since", stamps});
    CHECK(same.status == 0);
    CHECK_THAT(same.out, Catch::Contains("all marks are still as they were printed"));
    CHECK_THAT(same.out, Catch::Contains("nothing is written"));

    const auto other = run({"book", BARWRIGHT_SAMPLES "/tool_cabinet.json", "--out",
                            (scratch.path / "other.pdf").string(), "--since", stamps});
    CHECK(other.status == 0);
    CHECK_THAT(other.out, Catch::Contains("is drawn otherwise now"));
    // The changed drawings alone, and no stamps: the book is still the one that was printed.
    CHECK(bytes_of(scratch.path / "other.pdf").substr(0, 5) == "%PDF-");
    CHECK_FALSE(fs::exists(scratch.path / "other.stamps.json"));
}

TEST_CASE("changed pages never take the place of the book that they belong to",
          "[editor][command line]") {
    const tests::ScratchFolder scratch{"book_since_itself"};
    const auto book = scratch.path / "box.pdf";
    const auto stamps = scratch.path / "box.stamps.json";
    REQUIRE(run({"book", sample, "--out", book.string()}).status == 0);
    const auto bytes = bytes_of(book);
    const auto stamps_then = bytes_of(stamps);
    const auto roundabout = scratch.path / "." / "box.pdf";
    for (const auto& out : {book, roundabout, stamps}) {
        CAPTURE(out);
        const auto refused = run({"book", BARWRIGHT_SAMPLES "/tool_cabinet.json", "--out",
                                  out.string(), "--since", stamps.string()});
        CHECK(refused.status == 2);
        CHECK_THAT(refused.err, Catch::Contains("--out " + out.string()) &&
                                    Catch::Contains("box.stamps.json") &&
                                    Catch::Contains("give --out another name"));
        CHECK(bytes_of(book) == bytes);
        CHECK(bytes_of(stamps) == stamps_then);
    }
}

TEST_CASE("changed pages are bought from a supplier as the book is", "[editor][command line]") {
    const tests::ScratchFolder scratch{"book_since_supplier"};
    const auto stamps = (scratch.path / "box.stamps.json").string();
    REQUIRE(run({"book", sample, "--out", (scratch.path / "box.pdf").string()}).status == 0);
    const auto refused = run({"book", sample, "--out", (scratch.path / "changed.pdf").string(),
                              "--since", stamps, "--supplier", "nobody"});
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, Catch::Contains("nobody"));
}

TEST_CASE("a book that cannot be made is refused with the reason", "[editor][command line]") {
    const tests::ScratchFolder scratch{"book_refused"};
    const auto book = (scratch.path / "box.pdf").string();
    const auto refuses = [&](std::vector<std::string> arguments, const std::string& reason) {
        const auto refused = run(arguments);
        CAPTURE(refused.out, refused.err);
        CHECK(refused.status == 2);
        CHECK_THAT(refused.err, Catch::Contains(reason));
        CHECK_FALSE(fs::exists(book));
    };
    refuses({"book", sample}, "--out");
    refuses({"book", (scratch.path / "none.json").string(), "--out", book}, "none.json");
    refuses({"book", sample, "--out", book, "--paper", "foolscap"}, "--paper");
    refuses({"book", sample, "--out", book, "--supplier", "nobody"}, "nobody");
    refuses({"book", sample, "--out", book, "--since", sample}, "stamps");
    refuses({"book", sample, "--out", (scratch.path / "no" / "such" / "box.pdf").string()}, "such");
}

TEST_CASE("a project that is not fit to cut from has a book that says so, and a status",
          "[editor][command line]") {
    const tests::ScratchFolder scratch{"book_errors"};
    const auto project = scratch.path / "broken.json";
    std::ofstream(project) << R"({
  "barwright": 1, "name": "Broken",
  "stock": [{"name": "angle", "section": "angle 1 x 1 x 1/8", "alloy": "6063-T52"}],
  "frames": [{"name": "box", "members": [
    {"name": "post", "stock": "angle", "run": "z", "on": ["left", "front"],
     "legs": ["plus", "plus"],
     "from": "floor", "to": "top"}]}]})";
    const auto book = scratch.path / "broken.pdf";
    const auto made = run({"book", project.string(), "--out", book.string()});
    CHECK(made.status == 1);
    CHECK(fs::exists(book));
    CHECK_THAT(made.err, Catch::Contains("not fit to cut from"));

    // Its changed pages say so too, whether there are any or not.
    const auto stamps = (scratch.path / "broken.stamps.json").string();
    const auto same = run({"book", project.string(), "--out",
                           (scratch.path / "changed.pdf").string(), "--since", stamps});
    CHECK(same.status == 1);
    CHECK_THAT(same.err, Catch::Contains("not fit to cut from"));
}

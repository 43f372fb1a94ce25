#include "model/schedule/write_all.h"

#include "engine/files/csv.h"

#include "tests/model/schedule/small_job.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>

namespace {

std::string text_of(const tests::SmallJob& job, const std::string& name) {
    for (const auto& file : model::schedule_files(job.project, job.catalogue, job.resolved)) {
        if (file.name == name) return file.text;
    }
    FAIL("no file " + name);
    return {};
}

std::string members_of_first_mark(const std::string& member) {
    auto job = tests::small_job();
    job.project.frames[0].members[0].name = member;
    const auto table = engine::read_csv(text_of(job, "cut.csv"));
    REQUIRE(table);
    return table->rows[0].back();
}

}  // namespace

TEST_CASE("every table reads back with a field under each heading", "[model][schedule][csv]") {
    const auto job = tests::small_job();
    for (const auto& file : model::schedule_files(job.project, job.catalogue, job.resolved)) {
        if (file.name == "pieces.json" || file.name == "how_to_read.txt") continue;
        CAPTURE(file.name);
        const auto table = engine::read_csv(file.text);
        REQUIRE(table);
        // Its planes enclose nothing, so that it has no face to prove square.
        if (file.name != "square.csv") CHECK_FALSE(table->rows.empty());
        CHECK(engine::to_csv(*table) == file.text);
    }
}

TEST_CASE("a name that a spreadsheet would take for a formula is made safe",
          "[model][schedule][csv]") {
    CHECK(members_of_first_mark("=cmd()") == "'=cmd()");
    CHECK(members_of_first_mark("@x") == "'@x");
    CHECK(members_of_first_mark("+1+1") == "'+1+1");
}

TEST_CASE("commas, quotes, line breaks and foreign letters in names come through",
          "[model][schedule][csv]") {
    for (const std::string name :
         {"a, b", "the \"good\" post", "two\nlines", "\xC3\xBC\xE6\xA2\x81"}) {
        CHECK(members_of_first_mark(name) == name);
    }
}

TEST_CASE("a job of nothing gives tables of headings alone", "[model][schedule][csv]") {
    for (const auto& file : model::schedule_files({}, {}, {})) {
        CAPTURE(file.name);
        CHECK_FALSE(file.text.empty());
    }
}

TEST_CASE("all files are written into a folder that is made when it is missing",
          "[model][schedule][files]") {
    const auto job = tests::small_job();
    const tests::ScratchFolder scratch{"write_all"};
    const auto folder = scratch.path / "deep/out";
    const auto files = model::schedule_files(job.project, job.catalogue, job.resolved);
    REQUIRE(model::write_all(files, folder));
    for (const auto& file : files) {
        std::ifstream in(folder / file.name, std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(in), {}};
        CHECK(text == file.text);
    }
}

TEST_CASE("a folder that cannot be made is refused by its name", "[model][schedule][files]") {
    const tests::ScratchFolder scratch{"write_all_refused"};
    const auto file = scratch.path / "is_a_file";
    std::ofstream(file) << "here";
    const auto written = model::write_all({}, file / "out");
    REQUIRE_FALSE(written);
    CHECK(written.error().code == engine::ErrorCode::cannot_write);
    CHECK_THAT(written.error().where, Catch::Contains("is_a_file"));
}

TEST_CASE("the sheet beside the tables says when not to cut", "[model][schedule]") {
    auto job = tests::small_job();
    std::erase_if(job.resolved.findings, [](const model::Finding& finding) {
        return finding.severity == model::Severity::error;
    });
    CHECK(text_of(job, "how_to_read.txt").find("NOT FIT") == std::string::npos);
    job.resolved.findings.push_back(
        {.code = "interference", .severity = model::Severity::error, .what = "x", .mend = "y"});
    CHECK(text_of(job, "how_to_read.txt").find("NOT FIT TO CUT FROM: findings.csv names 1 thing") !=
          std::string::npos);
    CHECK(text_of(job, "how_to_read.txt").find("heel against the fence") != std::string::npos);
}

// Any sequence of edits, sensible or not, keeps the project readable and the argument untouched.
#include "model/project/edit_kinds.h"
#include "model/project/journal.h"
#include "model/project/project_json.h"
#include "model/project/references.h"

#include "tests/model/project/random_edit.h"

#include <catch2/catch.hpp>

#include <map>

using namespace model;
using model_tests::Draw;
using model_tests::project_to_edit;
using model_tests::random_edit;

namespace {

constexpr std::uint32_t seeds = 60;

std::size_t references_to_nothing(const Project& project) {
    std::size_t count = 0;
    for (const Frame& frame : project.frames) {
        count += missing_references(project, &frame, frame).size();
    }
    return count;
}

}  // namespace

TEST_CASE("whatever is edited, writing and reading gives the same project, and so does its journal",
          "[model][edit]") {
    const auto seed = GENERATE(range(0U, seeds));
    CAPTURE(seed);
    Draw draw{seed};
    Project project = project_to_edit();
    JournalWriter writer(project, "/somewhere/full.json");
    std::vector<std::string> records{writer.first_record()};
    std::size_t accepted = 0;
    static std::size_t vents_put = 0;  // over all seeds
    static std::size_t steps = 0;
    static std::map<std::size_t, std::size_t> taken;  // by kind of edit
    for (int step = 0; step < 90; ++step) {
        const Edit edit = random_edit(draw);
        const Project before = project;
        const auto after = apply(project, edit);
        CAPTURE(step, label_of(edit));
        REQUIRE(project == before);
        if (!after) {
            CHECK_FALSE(after.error().message.empty());
            continue;
        }
        ++accepted;
        ++taken[edit.one().kind.index()];
        if (edit.get_if<PutVents>() != nullptr) ++vents_put;
        if (edit.get_if<StepOver>() != nullptr) ++steps;
        project = *after;
        REQUIRE(references_to_nothing(project) == 0);
        const auto read = read_project_json(to_json_text(project));
        if (!read) FAIL(to_text(read.error()));
        REQUIRE(*read == project);
        if (auto record = writer.next_record(project, label_of(edit)))
            records.push_back(*std::move(record));
    }
    const auto journal = replayed(records);
    if (!journal) FAIL(to_text(journal.error()));
    CHECK(journal->now == project);
    CHECK(journal->steps + 1 == records.size());
    CHECK(accepted > 5);
    if (seed + 1 < seeds) return;
    CHECK(vents_put > 5);
    CHECK(steps > 5);
    for (std::size_t kind = Edit(FlipLegs{}).one().kind.index();
         kind <= Edit(TakeOutBay{}).one().kind.index(); ++kind) {
        CAPTURE(kind);
        CHECK(taken[kind] > 0);
    }
}

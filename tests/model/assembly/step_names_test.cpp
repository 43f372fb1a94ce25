// Steps are told apart by what they are called, in the window, on paper and in the file.
#include "model/assembly/step_names.h"

#include "engine/files/csv.h"
#include "model/assembly/assembly_csv.h"
#include "model/assembly/step_words.h"

#include "tests/model/book/book_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <utility>

namespace {

using model::Index;

struct Named {
    explicit Named(const std::string& sample)
        : project{tests::sample(sample)},
          resolved{model::resolve(project, tests::book_catalogue())},
          order{model::assembly_order(project, tests::book_catalogue(), resolved)},
          wording{project, tests::book_catalogue(), resolved, order},
          terms{project, tests::book_catalogue(), resolved, order},
          file{engine::read_csv(
                   model::assembly_csv(project, tests::book_catalogue(), resolved, order))
                   .value()} {}

    const std::string& field(const std::vector<std::string>& row, const std::string& name) const {
        const auto at = std::ranges::find(file.header, name);
        REQUIRE(at != file.header.end());
        return row[static_cast<std::size_t>(at - file.header.begin())];
    }

    model::Project project;
    model::Resolved resolved;
    model::AssemblyOrder order;
    model::StepWording wording;
    model::AssemblyTerms terms;
    engine::CsvTable file;
};

}  // namespace

TEST_CASE("no two steps of a frame have the same name, and none of a project the same title",
          "[model][assembly][samples]") {
    std::size_t alike_work = 0;
    for (const auto& sample : tests::sample_names()) {
        const Named it(sample);
        std::set<std::string> titles;
        std::set<std::pair<Index, std::string>> names;
        std::set<std::pair<Index, std::pair<model::AssemblyWork, std::string>>> works;
        for (Index s = 0; s < it.order.steps.size(); ++s) {
            const auto& step = it.order.steps[s];
            CAPTURE(sample, it.terms.step_name(s));
            CHECK(titles.insert(it.wording.title(s)).second);
            CHECK(names.emplace(step.frame, it.terms.step_name(s)).second);
            alike_work += works.insert({step.frame, {step.work, step.face}}).second ? 0U : 1U;
        }
    }
    CHECK(alike_work > 5);
}

TEST_CASE("a step is named by what is put on in it", "[model][assembly]") {
    std::size_t named = 0;
    for (const auto* sample : {"sleeping_platform.json", "tool_cabinet.json"}) {
        const Named it(sample);
        for (Index s = 0; s < it.order.steps.size(); ++s) {
            const auto& step = it.order.steps[s];
            const auto& name = it.terms.step_name(s);
            CAPTURE(sample, name);
            CHECK(it.wording.title_in_frame(s) ==
                  "Step " + std::to_string(model::step_number(it.order, s)) + ": " + name);
            const bool begins_with_piece = step.face.empty() && !step.moves.empty() &&
                                           step.moves.front().made_in == model::no_index;
            if (!begins_with_piece) continue;
            const auto member = it.terms.words.member(step.moves.front().pieces.front());
            CHECK(name.find(member) != std::string::npos);
            ++named;
        }
    }
    CHECK(named > 0);
    const Named platform("sleeping_platform.json");
    CHECK(platform.wording.title_in_frame(2) ==
          "Step 3: joined on, leg middle right and 11 more pieces");
}

TEST_CASE("the file has the names of the steps, and where the datum end of each piece goes",
          "[model][assembly][samples]") {
    std::set<std::string> sides;
    for (const auto& sample : tests::sample_names()) {
        CAPTURE(sample);
        const Named it(sample);
        std::set<std::pair<std::string, std::string>> told;  // frame, "3: joined on: rail"
        std::map<std::pair<std::string, std::string>, std::string> datum;  // by frame, member
        for (const auto& row : it.file.rows) {
            const auto& frame = it.field(row, "frame");
            told.emplace(frame, it.field(row, "step") + ": " + it.field(row, "work"));
            const auto& act = it.field(row, "do");
            if (act != "put on" && act != "lay down") {
                CHECK(it.field(row, "datum_side").empty());
                continue;
            }
            datum[{frame, it.field(row, "members")}] = it.field(row, "datum_side");
        }
        for (Index s = 0; s < it.order.steps.size(); ++s) {
            const auto& frame = it.project.frames[it.order.steps[s].frame].name;
            CHECK(told.count({frame, std::to_string(model::step_number(it.order, s)) + ": " +
                                         it.terms.step_name(s, ": ")}) == 1);
            for (const auto& move : it.order.steps[s].moves) {
                if (move.made_in != model::no_index) continue;
                const Index piece = move.pieces.front();
                const auto side = model::datum_side(it.resolved.pieces[piece]);
                CAPTURE(it.terms.words.member(piece));
                CHECK(datum[{frame, it.terms.words.member(piece)}] == side);
                sides.insert(side);
            }
        }
    }
    CHECK(sides.size() > 3);
}

// Nesting against optima proven a second time, in other formulations by a general-purpose solver
// (nest_optima.csv, made by tests/bench/cutting_solvers.py). The instance files lie beside the
// repository (BARWRIGHT_REFERENCE/cutting); without them nothing is checked here, and a note says
// so.
#include "engine/cutting/nest.h"

#include "tests/engine/cutting/nest_files.h"
#include "tests/reference/reference_table.h"

#include <catch2/catch.hpp>

#include <map>

namespace {

std::map<std::string, engine::NestProblem> problems_by_name() {
    std::map<std::string, engine::NestProblem> problems;
    for (const auto& file : tests::own_nest_files(BARWRIGHT_REFERENCE, tests::OwnGrid::tenths))
        problems[file.name] = file.problem;
    for (const auto& set : tests::published_nest_sets(BARWRIGHT_REFERENCE)) {
        for (const auto& file : set.files) problems[file.name] = file.problem;
    }
    return problems;
}

}  // namespace

TEST_CASE("nests cost what a general-purpose solver proved in other formulations", "[cutting]") {
    const auto problems = problems_by_name();
    if (problems.empty()) {
        WARN("no instance files beside the repository");
        return;
    }
    std::map<std::string, bool> seen;
    for (const ReferenceRow& row : reference_rows("nest_optima.csv")) {
        const std::string name = row.text("instance");
        INFO(name << ", " << row.text("source"));
        REQUIRE(problems.count(name) == 1);
        const auto nest = engine::nest(problems.at(name));
        REQUIRE(nest);
        CHECK(nest->is_cheapest);
        CHECK(static_cast<double>(nest->plan.cost) == row.number("cost"));
        seen[name] = true;
    }
    CHECK(seen.size() >= 30);
}

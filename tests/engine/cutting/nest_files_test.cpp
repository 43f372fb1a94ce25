// Published and own instances, where reference/cutting lies beside the repository; without it
// nothing is checked here and a note says so. BARWRIGHT_NEST_EVERY=1 takes every file (minutes),
// otherwise each set is sampled.
#include "tests/engine/cutting/nest_files.h"

#include "engine/cutting/nest.h"

#include "tests/engine/cutting/nest_checks.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>

using namespace engine;

namespace {

const NestLimits some_work{.work = 600'000'000, .go_on = {}};

std::size_t every(std::size_t otherwise) {
    const char* asked = std::getenv("BARWRIGHT_NEST_EVERY");
    return asked ? static_cast<std::size_t>(std::max(1, std::atoi(asked))) : otherwise;
}

void check(const tests::NestFile& file, bool is_to_be_proven) {
    const auto nest = engine::nest(file.problem, some_work);
    INFO(file.name);
    REQUIRE(nest);
    CHECK(tests::why_not(file.problem, nest->plan) == "");
    if (file.least) CHECK(nest->plan.cost >= *file.least);
    if (file.most) CHECK(nest->least_cost <= *file.most);
    if (is_to_be_proven) CHECK(nest->is_cheapest);
    if (nest->is_cheapest && file.most) CHECK(nest->plan.cost <= *file.most);
}

const tests::NestFile& named(const std::vector<tests::NestFile>& files, const std::string& name) {
    const auto found = std::find_if(files.begin(), files.end(),
                                    [&](const tests::NestFile& file) { return file.name == name; });
    REQUIRE(found != files.end());
    return *found;
}

}  // namespace

TEST_CASE("cabinets of three mill lengths are proven at their known cost", "[cutting][files]") {
    const auto files = tests::own_nest_files(BARWRIGHT_REFERENCE, tests::OwnGrid::tenths);
    if (files.empty()) WARN("no instance files beside the repository");
    for (const tests::NestFile& file : files) check(file, true);
}

TEST_CASE("the same cabinets in 0.01 mm cost no more than on the coarser grid",
          "[cutting][files]") {
    const auto files = tests::own_nest_files(BARWRIGHT_REFERENCE, tests::OwnGrid::hundredths);
    for (std::size_t i = 0; i < files.size(); i += every(4)) {
        const auto nest = engine::nest(files[i].problem, some_work);
        INFO(files[i].name);
        REQUIRE(nest);
        CHECK(tests::why_not(files[i].problem, nest->plan) == "");
        CHECK(nest->least_cost <= *files[i].most);
        if (nest->is_cheapest) CHECK(nest->plan.cost <= *files[i].most);
    }
}

TEST_CASE("no published optimum is contradicted", "[cutting][files]") {
    for (const tests::NestSet& set : tests::published_nest_sets(BARWRIGHT_REFERENCE)) {
        const bool is_hard =
            set.name == "Hard28" || set.name == "Scholl 2" || set.name == "Scholl 3";
        const std::size_t step =
            every(is_hard ? 9 : std::max<std::size_t>(7, set.files.size() / 8));
        for (std::size_t i = 0; i < set.files.size(); i += step) check(set.files[i], !is_hard);
    }
}

// checks.md 23: the relaxation of Hard28's BPP14 is 61.00, its optimum 62.
TEST_CASE("a bound that no plan reaches is not claimed as one", "[cutting][files]") {
    for (const tests::NestSet& set : tests::published_nest_sets(BARWRIGHT_REFERENCE)) {
        if (set.name != "Hard28") continue;
        const tests::NestFile& file = named(set.files, "Hard28_BPP14");
        const auto nest = engine::nest(file.problem, some_work);
        REQUIRE(nest);
        CHECK(nest->plan.cost == 62);
        CHECK(nest->least_cost >= 61);
        CHECK(nest->is_cheapest == (nest->least_cost == 62));
    }
}

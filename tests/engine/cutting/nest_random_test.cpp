#include "engine/cutting/nest.h"

#include "tests/engine/cutting/nest_checks.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace engine;

namespace {

constexpr std::uint32_t seeds = 2'000;
const NestLimits some_work{.work = 60'000'000, .go_on = {}};

void shuffle(NestProblem& problem, std::uint32_t seed) {
    std::mt19937 random(seed);
    for (std::size_t i = problem.pieces.size(); i > 1; --i)
        std::swap(problem.pieces[i - 1], problem.pieces[random() % i]);
    for (std::size_t i = problem.stock.size(); i > 1; --i)
        std::swap(problem.stock[i - 1], problem.stock[random() % i]);
}

NestProblem with_more_supply(NestProblem problem) {
    for (NestStock& stock : problem.stock) {
        if (stock.supply) ++*stock.supply;
    }
    return problem;
}

NestProblem without_kerf(NestProblem problem) {
    problem.kerf = 0;
    return problem;
}

}  // namespace

TEST_CASE("every plan of random problems can be cut as it says", "[cutting][invariants]") {
    for (std::uint32_t seed = 0; seed < seeds; ++seed) {
        const NestProblem problem = tests::random_nest(seed, 24);
        const auto nest = engine::nest(problem, some_work);
        CAPTURE(seed);
        REQUIRE(nest);
        CHECK(tests::why_not(problem, nest->plan) == "");
        CHECK(fault(problem, nest->plan).value_or("") == "");
        CHECK(nest->least_cost <= nest->plan.cost);
        CHECK(nest->is_cheapest == (nest->least_cost == nest->plan.cost));
        CHECK((!nest->is_shortest || nest->is_cheapest));
    }
}

TEST_CASE("the order in which pieces and bars are listed changes no cost",
          "[cutting][invariants]") {
    for (std::uint32_t seed = 0; seed < seeds; ++seed) {
        NestProblem problem = tests::random_nest(seed, 24);
        const auto nest = engine::nest(problem, some_work);
        shuffle(problem, seed);
        const auto other = engine::nest(problem, some_work);
        CAPTURE(seed);
        REQUIRE(nest);
        REQUIRE(other);
        CHECK(nest->is_cheapest);
        CHECK(nest->plan.cost == other->plan.cost);
        CHECK(nest->least_cost == other->least_cost);
        if (nest->is_shortest && other->is_shortest)
            CHECK(nest->plan.bought_length == other->plan.bought_length);
    }
}

TEST_CASE("more bars on offer and a thinner kerf never cost more", "[cutting][invariants]") {
    for (std::uint32_t seed = 0; seed < seeds; ++seed) {
        const NestProblem problem = tests::random_nest(seed, 24);
        const auto nest = engine::nest(problem, some_work);
        const auto supplied = engine::nest(with_more_supply(problem), some_work);
        const auto thinner = engine::nest(without_kerf(problem), some_work);
        CAPTURE(seed);
        REQUIRE(nest);
        REQUIRE(supplied);
        REQUIRE(thinner);
        CHECK(supplied->least_cost <= nest->plan.cost);
        CHECK(thinner->least_cost <= nest->plan.cost);
        if (supplied->is_cheapest) CHECK(supplied->plan.cost <= nest->plan.cost);
        if (thinner->is_cheapest) CHECK(thinner->plan.cost <= nest->plan.cost);
    }
}

TEST_CASE("what is proven cheapest and shortest is so by trying every way",
          "[cutting][invariants]") {
    int without_plan = 0;
    for (std::uint32_t seed = 0; seed < seeds; ++seed) {
        NestProblem problem = tests::random_nest(seed, 7);
        if (seed % 5 == 0) problem.stock.front().supply = 1 + seed % 3;
        const auto least = tests::least_price_by_trying(problem);
        const auto nest = engine::nest(problem, some_work);
        CAPTURE(seed);
        REQUIRE(nest.has_value() == least.has_value());
        if (!least) ++without_plan;
        if (!least) continue;
        CHECK(nest->is_cheapest);
        CHECK(nest->is_shortest);
        CHECK(nest->plan.cost == least->cost);
        CHECK(nest->plan.bought_length == least->bought_length);
    }
    CHECK(without_plan > 20);  // both sides were tried
}

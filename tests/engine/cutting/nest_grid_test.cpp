#include "engine/cutting/nest_grid.h"

#include "tests/engine/cutting/nest_checks.h"
#include "tests/engine/cutting/nest_files.h"

#include <catch2/catch.hpp>

#include <random>

using namespace engine;

namespace {

constexpr std::int64_t tenth_mm = 100'000;   // in nanometres
constexpr std::int64_t inch = 25'400'000;    // inch = 25.4 mm exactly (SP 811, from memory)
constexpr std::int64_t inch_64 = inch / 64;  // 396'875

void check_plan(const NestProblem& problem, const Nest& nest) {
    CHECK(tests::why_not(problem, nest.plan) == "");
    CHECK(fault(problem, nest.plan).value_or("") == "");
    CHECK(nest.least_cost <= nest.plan.cost);
}

// A random problem of small numbers, made as fine as nanometres.
NestProblem in_nanometres(NestProblem problem, std::mt19937& random) {
    const auto finer = [&random](std::int64_t& length) {
        if (length > 0) length = length * 1'000'000 + static_cast<int>(random() % 1'000'000);
    };
    finer(problem.kerf);
    finer(problem.least_held);
    for (NestPiece& piece : problem.pieces) piece.length *= 1'000'000;
    for (NestPiece& piece : problem.pieces) piece.length -= static_cast<int>(random() % 1'000'000);
    for (NestStock& stock : problem.stock) {
        finer(stock.length);
        finer(stock.trim_start);
        finer(stock.trim_end);
    }
    return problem;
}

NestProblem sixteen_feet(std::int64_t piece, std::int64_t kerf) {
    NestProblem problem{.pieces = {{piece, 5}}, .stock = {}, .kerf = kerf};
    problem.stock = {{.length = 192 * inch, .price = 1}};
    return problem;
}

}  // namespace

TEST_CASE("a plan found on a grid can be cut in the lengths as they are", "[cutting][grid]") {
    std::mt19937 random(3);
    for (std::uint32_t seed = 0; seed < 1'000; ++seed) {
        NestProblem problem = in_nanometres(tests::random_nest(seed, 12), random);
        problem.stock.front().length += 60'000'000;  // so that no piece is longer
        const std::int64_t step = seed % 2 == 0 ? tenth_mm : 2'500'000;
        const auto nest = nest_on_grid(problem, step, {.work = 20'000'000, .go_on = {}});
        CAPTURE(seed);
        REQUIRE(nest);
        check_plan(problem, *nest);
    }
}

TEST_CASE("what is cheapest on a grid is never cheaper than what is cheapest without it",
          "[cutting][grid]") {
    std::mt19937 random(4);
    int dearer = 0;
    for (std::uint32_t seed = 0; seed < 1'000; ++seed) {
        NestProblem problem = in_nanometres(tests::random_nest(seed, 7), random);
        problem.stock.front().length += 60'000'000;
        const auto least = tests::least_price_by_trying(problem);
        const auto fine = nest_on_grid(problem, tenth_mm);
        const auto coarse = nest_on_grid(problem, 4'000'000);
        CAPTURE(seed);
        REQUIRE(least);
        REQUIRE(fine);
        REQUIRE(coarse);
        CHECK(fine->plan.cost >= least->cost);
        CHECK(coarse->plan.cost >= least->cost);
        if (coarse->plan.cost > least->cost) ++dearer;
    }
    CHECK(dearer > 20);  // that grid is too coarse not to be noticed
}

TEST_CASE("where all lengths are whole steps the grid changes nothing", "[cutting][grid]") {
    for (std::uint32_t seed = 0; seed < 300; ++seed) {
        const NestProblem problem = tests::random_nest(seed, 9);
        NestProblem fine = problem;
        fine.kerf *= tenth_mm;
        fine.least_held *= tenth_mm;
        for (NestPiece& piece : fine.pieces) piece.length *= tenth_mm;
        for (NestStock& stock : fine.stock) {
            stock.length *= tenth_mm;
            stock.trim_start *= tenth_mm;
            stock.trim_end *= tenth_mm;
        }
        const auto whole = engine::nest(problem);
        const auto on_grid = nest_on_grid(fine, tenth_mm);
        CAPTURE(seed);
        REQUIRE(whole);
        REQUIRE(on_grid);
        CHECK(on_grid->plan.cost == whole->plan.cost);
        CHECK(on_grid->plan.bought_length == whole->plan.bought_length * tenth_mm);
        CHECK(on_grid->is_cheapest == whole->is_cheapest);
        CHECK(on_grid->is_shortest == whole->is_shortest);
        check_plan(fine, *on_grid);
    }
}

TEST_CASE("lengths in 64ths of an inch are nested exactly on a grid of 0.1 mm", "[cutting][grid]") {
    const std::int64_t piece = 38 * inch + 19 * inch_64;  // five and four kerfs: 1/64 in to spare
    const auto filled = nest_on_grid(sixteen_feet(piece, inch / 8), tenth_mm);
    REQUIRE(filled);
    CHECK(filled->plan.cost == 1);
    check_plan(sixteen_feet(piece, inch / 8), *filled);
    const NestProblem longer = sixteen_feet(piece + inch_64, inch / 8);
    CHECK(nest_on_grid(longer, tenth_mm)->plan.cost == 2);
}

TEST_CASE("a piece as long as its bar is cut though the grid has no room for it",
          "[cutting][grid]") {
    NestProblem problem{.pieces = {{1'234'567'891, 1}, {500'000'003, 2}}, .stock = {}};
    problem.kerf = 3'000'000;
    problem.stock = {{.length = 1'234'567'891, .price = 10}};
    const auto nest = nest_on_grid(problem, tenth_mm);
    REQUIRE(nest);
    CHECK(nest->plan.cost == 20);
    check_plan(problem, *nest);
}

TEST_CASE("what cannot be is refused in its own lengths", "[cutting][grid]") {
    NestProblem problem{.pieces = {{1'234'567'892, 1}}, .stock = {}};
    problem.stock = {{.length = 1'234'567'891, .price = 10}};
    const auto nest = nest_on_grid(problem, tenth_mm);
    REQUIRE(!nest);
    CHECK(nest.error().message ==
          "is 1234567892 long; the longest that any bar gives is "
          "1234567891; splice it or offer a longer bar");
}

TEST_CASE("offcuts and bought length are told in the lengths as they are", "[cutting][grid]") {
    NestProblem problem{.pieces = {{400'000'001, 2}}, .stock = {}, .kerf = 3'000'000};
    problem.stock = {{.length = 1'000'000'007, .price = 10, .trim_start = 10'000'000}};
    const auto nest = nest_on_grid(problem, tenth_mm);
    REQUIRE(nest);
    CHECK(nest->plan.bought_length == 1'000'000'007);
    CHECK(nest->plan.longest_offcut == 184'000'005);  // 1000000007 - 10000000 - 2 x 403000001
    CHECK(nest->is_cheapest);
    CHECK(!nest->is_shortest);  // bars that are no whole steps are not compared exactly
}

TEST_CASE("a plan that is told on the way can be cut in the lengths as they are",
          "[cutting][grid]") {
    std::vector<NestPiece> pieces;
    for (int i = 0; i < 60; ++i)
        pieces.push_back({.length = 200'000'003 + (i * 7919) % 15'000 * 10'000, .quantity = 3});
    const NestProblem problem = tests::one_bar_problem(1'000'000'000, pieces);
    int told = 0;
    const auto nest = nest_on_grid(problem, tenth_mm,
                                   {.work = 60'000'000, .go_on = [&](const NestProgress& progress) {
                                        REQUIRE(progress.plan);
                                        CHECK(tests::why_not(problem, *progress.plan) == "");
                                        CHECK(fault(problem, *progress.plan).value_or("") == "");
                                        CHECK(progress.plan->cost == *progress.cost);
                                        ++told;
                                        return true;
                                    }});
    REQUIRE(nest);
    CHECK(told > 3);
    check_plan(problem, *nest);
}

#include "engine/cutting/nest.h"

#include "engine/cutting/nest_input.h"

#include "tests/engine/cutting/nest_checks.h"
#include "tests/engine/cutting/nest_files.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace engine;

namespace {

NestProblem small_problem() {
    NestProblem problem{.pieces = {{50, 4}, {30, 3}}, .stock = {}, .kerf = 1};
    problem.stock = {{.length = 120, .price = 500}};
    return problem;
}

Error error_of(const NestProblem& problem) {
    const auto nest = engine::nest(problem);
    REQUIRE(!nest);
    return nest.error();
}

NestProblem hard_problem() {
    std::vector<NestPiece> pieces;
    for (int i = 0; i < 60; ++i)
        pieces.push_back({.length = 20'000 + (i * 7919) % 15'000, .quantity = 3});
    return tests::one_bar_problem(100'000, pieces);
}

}  // namespace

TEST_CASE("nothing to cut needs no bars", "[cutting]") {
    NestProblem problem = small_problem();
    problem.pieces = {{.length = 50, .quantity = 0}};
    const auto nest = engine::nest(problem);
    REQUIRE(nest);
    CHECK(nest->plan == NestPlan{});
    CHECK(nest->is_cheapest);
}

TEST_CASE("what cannot be is refused with its place and what to do", "[cutting]") {
    NestProblem problem = small_problem();
    problem.stock[0].price = 0;
    CHECK(to_text(error_of(problem)) ==
          "stock 1, price: is 0 for as many bars as are wanted; give its price, or how many there "
          "are");

    problem = small_problem();
    problem.pieces[1].length = 0;
    CHECK(to_text(error_of(problem)) == "piece 2, length: must be longer than 0");

    problem = small_problem();
    problem.pieces[0].quantity = -1;
    CHECK(to_text(error_of(problem)) == "piece 1, quantity: must not be below 0");

    problem = small_problem();
    problem.stock[0].price = -5;
    CHECK(to_text(error_of(problem)) == "stock 1, price: must not be below 0");

    problem = small_problem();
    problem.stock[0].trim_end = -1;
    CHECK(to_text(error_of(problem)) == "stock 1, trim at the end: must not be below 0");

    problem = small_problem();
    problem.stock[0].supply = -1;
    CHECK(to_text(error_of(problem)) == "stock 1, supply: must not be below 0");

    problem = small_problem();
    problem.kerf = -1;
    CHECK(to_text(error_of(problem)) == "kerf: must not be below 0");

    problem = small_problem();
    problem.stock.clear();
    CHECK(to_text(error_of(problem)) == "piece 1: is 50 long; there is no bar to cut it from");
}

TEST_CASE("numbers that could overflow are refused, not wrapped", "[cutting]") {
    constexpr std::int64_t huge = std::numeric_limits<std::int64_t>::max();
    NestProblem problem = small_problem();
    problem.pieces[0].quantity = huge;
    CHECK(error_of(problem).code == ErrorCode::out_of_range);

    problem = small_problem();
    problem.pieces = {{50, 15'000}, {30, 15'000}};
    CHECK(error_of(problem).where == "piece 2, quantity");

    problem = small_problem();
    problem.stock[0].length = huge;
    CHECK(error_of(problem).where == "stock 1, length");

    problem = small_problem();
    problem.kerf = huge;
    CHECK(error_of(problem).where == "kerf");

    problem = small_problem();
    problem.stock[0].trim_start = huge;
    CHECK(error_of(problem).where == "stock 1, trim at the start");

    problem = small_problem();
    problem.stock[0].price = huge;
    CHECK(error_of(problem).where == "stock 1, price");

    problem = small_problem();
    problem.stock[0].supply = huge;
    CHECK(engine::nest(problem).has_value());
}

// So many rows that nothing is searched for: a first plan fails, and more is not known.
TEST_CASE("what was not searched is not said to be impossible", "[cutting]") {
    NestProblem problem{.pieces = {{40, 1}, {35, 3}, {32, 1}}, .stock = {}};
    for (int p = 0; p < 1'600; ++p) problem.pieces.push_back({1'000 + p, 1});
    problem.stock = {{.length = 68, .price = 0, .supply = 1, .is_remnant = true},
                     {.length = 113, .price = 0, .supply = 1, .is_remnant = true}};
    for (int p = 0; p < 320; ++p)
        problem.stock.push_back({.length = 5'000 + 25 * p + 10, .price = 1'000, .supply = 1});
    const Error error = error_of(problem);
    CHECK(to_text(error) == "nest: no plan was found within the bars on offer; offer more of them");
}

// Beside a long bar on hand a dear one that holds next to nothing: buying enough of it would cost
// more than 64 bits hold.
TEST_CASE("a supply that falls short by more money than can be counted is told", "[cutting]") {
    NestProblem problem{.pieces = {{100'000'000'000, 20'000}}, .stock = {}};
    problem.stock = {{.length = 100'000'000'000, .price = 0, .supply = 1},
                     {.length = 1, .price = 1'000'000'000}};
    CHECK(error_of(problem).where == "stock");
}

TEST_CASE("thousands of long bars on hand are shared out", "[cutting]") {
    NestProblem problem{.pieces = {{60'000'000'000, 10'000}, {50'000'000'000, 10'000}},
                        .stock = {}};
    for (int s = 0; s < 100; ++s)
        problem.stock.push_back({.length = 100'000'000'000 - s, .price = 0, .supply = 20'000});
    const auto nest = engine::nest(problem, {.work = 10'000'000, .go_on = {}});
    REQUIRE(nest);
    CHECK(tests::why_not(problem, nest->plan) == "");
}

TEST_CASE("lengths in nanometres are nested as they are", "[cutting]") {
    NestProblem problem{.pieces = {{1'197'600'000, 5}}, .stock = {}, .kerf = 3'000'000};
    problem.stock = {{.length = 6'000'000'000, .price = 1}};
    CHECK(engine::nest(problem)->plan.cost == 1);
    problem.pieces[0].length += 1;
    CHECK(engine::nest(problem)->plan.cost == 2);
}

// What is left of a bar beyond whole units is not used by any piece, but it helps the vice.
TEST_CASE("pieces that are whole numbers of a coarse unit are nested in that unit", "[cutting]") {
    NestProblem problem{.pieces = {{970, 2}, {470, 3}}, .stock = {}, .kerf = 30};
    problem.stock = {{.length = 2'019, .price = 10, .trim_start = 20, .trim_end = 5}};
    problem.least_held = 500;
    const cutting::Task task = cutting::task_of(problem);
    CHECK(task.items[0].weight == 2);
    CHECK(task.items[1].weight == 1);
    CHECK(task.bars[0].capacity == 4);  // 2024 by 500

    for (std::int64_t held = 1; held < 1'990; ++held) {
        problem.least_held = held;
        const cutting::Task again = cutting::task_of(problem);
        for (const auto& [item, length] : {std::pair{0, 970}, std::pair{1, 470}}) {
            const std::int64_t room =
                cutting::room(again.bars[0], again.items[static_cast<std::size_t>(item)].longest);
            const std::int64_t held_room = 2'019 - 20 + 30 + length - held;
            CHECK(room == std::min<std::int64_t>(2'024, held_room) / 500);
        }
    }
}

TEST_CASE("a supply that does not hold all pieces is told", "[cutting]") {
    NestProblem problem = small_problem();
    problem.stock[0].supply = 2;
    CHECK(to_text(error_of(problem)) ==
          "stock: the bars on offer do not hold all pieces; offer more of them");
}

// The longest piece first into the shorter bar, as the first plan tries it, leaves no room.
TEST_CASE("bars on hand alone are tried in more ways than one", "[cutting]") {
    NestProblem problem{.pieces = {{40, 1}, {35, 3}, {32, 1}}, .stock = {}};
    problem.stock = {{.length = 69, .price = 0, .supply = 1, .trim_start = 1, .is_remnant = true},
                     {.length = 113, .price = 0, .supply = 1, .is_remnant = true}};
    const auto nest = engine::nest(problem, {.work = 10'000'000, .go_on = {}});
    REQUIRE(nest);
    CHECK(nest->plan.cost == 0);
    CHECK(nest->is_cheapest);
    CHECK(tests::why_not(problem, nest->plan) == "");

    problem.stock[1].length = 109;  // 177 in all, as there are pieces; none make 68
    CHECK(to_text(error_of(problem)) ==
          "stock: the bars on offer do not hold all pieces; offer more of them");
}

TEST_CASE("the last piece of a bar is held by the vice, with what is behind it", "[cutting]") {
    NestProblem problem{.pieces = {{10, 10}}, .stock = {}};  // ten of 10 fill a bar of 100
    problem.stock = {{.length = 100, .price = 1}};
    CHECK(engine::nest(problem)->plan.cost == 1);
    problem.least_held = 15;
    const auto nest = engine::nest(problem);
    REQUIRE(nest);
    CHECK(nest->plan.cost == 2);
    CHECK(tests::why_not(problem, nest->plan) == "");

    problem.pieces.push_back({15, 1});  // long enough to be cut last, after eight of 10
    problem.pieces[0].quantity = 8;
    CHECK(engine::nest(problem)->plan.cost == 1);

    problem.pieces = {{10, 9}};
    problem.stock[0].trim_end = 5;  // waste, but it can be held
    CHECK(engine::nest(problem)->plan.cost == 1);
}

TEST_CASE("of plans that cost the same the one with less bought length is taken", "[cutting]") {
    NestProblem problem{.pieces = {{40, 2}}, .stock = {}};
    problem.stock = {
        {.length = 100, .price = 50}, {.length = 80, .price = 50}, {.length = 40, .price = 25}};
    const auto nest = engine::nest(problem);
    REQUIRE(nest);
    CHECK(nest->plan.cost == 50);
    CHECK(nest->plan.bought_length == 80);
    CHECK(nest->is_shortest);
}

TEST_CASE("what is left over is in one bar", "[cutting]") {
    NestProblem problem{.pieces = {{30, 4}, {20, 4}}, .stock = {}};  // 200 of 300
    problem.stock = {{.length = 100, .price = 7, .supply = 3},
                     {.length = 200, .price = 21, .supply = 1}};
    const auto nest = engine::nest(problem);
    REQUIRE(nest);
    CHECK(nest->plan.cost == 14);

    problem.pieces = {{30, 5}, {20, 4}};  // 230: three bars, 70 left over
    const auto longer = engine::nest(problem);
    REQUIRE(longer);
    CHECK(longer->plan.cost == 21);
    CHECK(longer->plan.longest_offcut == 70);
}

TEST_CASE("pieces of equal length that are asked for in two places are all cut", "[cutting]") {
    NestProblem problem{.pieces = {{30, 3}, {50, 2}, {30, 4}}, .stock = {}, .kerf = 2};
    problem.stock = {{.length = 130, .price = 100}};
    const auto nest = engine::nest(problem);
    REQUIRE(nest);
    CHECK(tests::why_not(problem, nest->plan) == "");
}

TEST_CASE("a plan is the same each time", "[cutting]") {
    const NestLimits limits{.work = 100'000'000, .go_on = {}};
    const auto first = engine::nest(hard_problem(), limits);
    const auto second = engine::nest(hard_problem(), limits);
    REQUIRE(first);
    REQUIRE(second);
    CHECK(first->plan == second->plan);
    CHECK(first->least_cost == second->least_cost);
    CHECK(first->work == second->work);
}

TEST_CASE("a nest that is stopped gives the plan it has, and what is proven of it", "[cutting]") {
    const NestProblem problem = hard_problem();
    int asked = 0;
    const auto nest =
        engine::nest(problem, {.work = 4'000'000'000, .go_on = [&](const NestProgress& progress) {
                                   ++asked;
                                   CHECK(progress.cost.has_value());
                                   CHECK(progress.least_cost <= *progress.cost);
                                   REQUIRE(progress.plan);
                                   CHECK(progress.plan->cost == *progress.cost);
                                   CHECK(tests::why_not(problem, *progress.plan) == "");
                                   return asked < 3;
                               }});
    REQUIRE(nest);
    CHECK(asked == 3);
    CHECK(tests::why_not(problem, nest->plan) == "");
    CHECK(nest->least_cost <= nest->plan.cost);
}

TEST_CASE("with hardly any work allowed there is a plan already", "[cutting]") {
    const NestProblem problem = hard_problem();
    const auto nest = engine::nest(problem, {.work = 1, .go_on = {}});
    REQUIRE(nest);
    CHECK(tests::why_not(problem, nest->plan) == "");
    CHECK(nest->least_cost <= nest->plan.cost);
}

TEST_CASE("thousands of different lengths are nested, if not to a proof", "[cutting]") {
    std::vector<NestPiece> pieces;
    for (int i = 0; i < 2'000; ++i)
        pieces.push_back({.length = 20'000 + (i * 7919) % 15'013, .quantity = 1});
    const NestProblem problem = tests::one_bar_problem(100'000, pieces);
    const auto nest = engine::nest(problem, {.work = 20'000'000, .go_on = {}});
    REQUIRE(nest);
    CHECK(tests::why_not(problem, nest->plan) == "");
    CHECK(nest->least_cost <= nest->plan.cost);
}

TEST_CASE("a plan that does not fit the problem is found out", "[cutting]") {
    const NestProblem problem = small_problem();
    const NestPlan good = engine::nest(problem)->plan;
    CHECK(!fault(problem, good));

    NestPlan bad = good;
    bad.layouts[0].bars += 1;
    CHECK(fault(problem, bad));

    bad = good;
    bad.layouts[0].cuts[0].count += 5;
    CHECK(fault(problem, bad) == "layout 1 takes more than its bar has");

    bad = good;
    bad.layouts[0].cuts[0].piece = 9;
    CHECK(fault(problem, bad) == "layout 1 has bars or cuts that do not exist");

    bad = good;
    bad.cost -= 1;
    CHECK(fault(problem, bad) == "the cost is not the sum of the bars' prices");
}

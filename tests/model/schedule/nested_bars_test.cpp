// Bars nested for the whole project. The examples with three bars of 16, 20 and 25 ft (4877, 6096
// and 7620 mm at 32.90, 39.80 and 48.70, kerf 3 mm, 10 mm trimmed in all) were made for this
// project and solved to a proven optimum by two methods of their own, as were those of kerfs by
// hand: tests/reference/cutting.
#include "model/schedule/bar_plan.h"
#include "model/schedule/stops.h"

#include "tests/model/schedule/saw_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <numeric>
#include <random>
#include <set>

using engine::Nm;
using tests::mm;

namespace {

std::map<Nm, int> bought(const model::BarPlan& plan) {
    std::map<Nm, int> count;
    for (const auto& bar : plan.bars) {
        if (bar.from == model::BarFrom::shop) ++count[bar.length];
    }
    return count;
}

tests::SmallJob three_bars() {
    auto job = tests::saw_job(
        {1500, 1500, 1500, 1500, 900, 900, 900, 900, 900, 900, 600, 600, 600, 600, 600});
    job.project.stock[0].bars = {{.length = "4877 mm", .price = 32.90},
                                 {.length = "6096 mm", .price = 39.80},
                                 {.length = "7620 mm", .price = 48.70}};
    return job;
}

}  // namespace

TEST_CASE("four, six and five pieces take two of the longest bars", "[model][schedule][nested]") {
    const auto plan = tests::plan_of(three_bars());
    CHECK(plan.cost == 9740);
    CHECK(plan.least_cost == 9740);
    CHECK(plan.is_cheapest);
    CHECK(bought(plan) == std::map<Nm, int>{{mm(7620), 2}});
}

TEST_CASE("without the longest bar, or with one of it, three short ones are cheapest",
          "[model][schedule][nested]") {
    auto job = three_bars();
    job.project.stock[0].bars[2].limit = 1;
    auto plan = tests::plan_of(job);
    CHECK(plan.cost == 9870);
    CHECK(plan.is_cheapest);
    CHECK(bought(plan) == std::map<Nm, int>{{mm(4877), 3}});
    job.project.stock[0].bars.pop_back();
    plan = tests::plan_of(job);
    CHECK(plan.cost == 9870);
    CHECK(bought(plan) == std::map<Nm, int>{{mm(4877), 3}});
}

TEST_CASE("an offcut on the rack saves part of a bar", "[model][schedule][nested]") {
    auto job = three_bars();
    job.project.stock[0].offcuts = {{.length = "1900 mm"}};
    const auto plan = tests::plan_of(job);
    CHECK(plan.cost == 8850);
    CHECK(bought(plan) == std::map<Nm, int>{{mm(6096), 1}, {mm(7620), 1}});
    CHECK(std::ranges::count(plan.bars, model::BarFrom::offcut, &model::PlannedBar::from) == 1);
}

TEST_CASE("a whole bar at home stays whole where a rest or an offcut will do",
          "[model][schedule][nested]") {
    auto job = tests::saw_job({1400, 1400, 1400, 1400, 1000});
    job.project.stock[0].bars = {{.length = "6 m", .price = 40.0}};
    job.project.stock[0].at_home = {{.length = "6 m", .count = 3}};
    const auto from = [](const model::BarPlan& plan, model::BarFrom place) {
        return std::ranges::count(plan.bars, place, &model::PlannedBar::from);
    };
    auto plan = tests::plan_of(job);
    CHECK(from(plan, model::BarFrom::home) == 2);
    job.project.stock[0].offcuts = {{.length = "1200 mm"}};
    plan = tests::plan_of(job);
    CHECK(plan.cost == 0);
    CHECK(plan.is_cheapest);
    CHECK(from(plan, model::BarFrom::home) == 1);
    CHECK(from(plan, model::BarFrom::offcut) == 1);
}

TEST_CASE("one long bar at home is begun before more of the length of short ones",
          "[model][schedule][nested]") {
    auto job = tests::saw_job({1400, 1400, 1400, 1400});
    job.project.stock[0].bars = {{.length = "6 m", .price = 40.0}};
    job.project.stock[0].at_home = {{.length = "6 m", .count = 2},
                                    {.length = "1800 mm", .count = 9}};
    const auto plan = tests::plan_of(job);
    CHECK(plan.cost == 0);
    REQUIRE(plan.bars.size() == 1);
    CHECK(plan.bars[0].length == mm(6000));
    // A fifth takes one of the short ones, and no second long one.
    auto more = tests::saw_job({1400, 1400, 1400, 1400, 1400});
    more.project.stock[0] = job.project.stock[0];
    CHECK(tests::plan_of(more).bars.size() == 2);
}

TEST_CASE("a bar without a price counts as much as the others do for their length",
          "[model][schedule][nested]") {
    auto job = tests::saw_job({1000, 1000});
    job.project.stock[0].bars = {{.length = "4 m", .price = 40.0}, {.length = "3 m"}};
    const auto plan = tests::plan_of(job);
    CHECK(bought(plan) == std::map<Nm, int>{{mm(3000), 1}});
    CHECK(plan.cost == 3000);
    CHECK_FALSE(plan.bars[0].price);
}

TEST_CASE("a bar that lies at home is cut before one is bought", "[model][schedule][nested]") {
    auto job = tests::saw_job({3000, 3000, 2000});
    job.project.stock[0].bars = {{.length = "6 m", .price = 30.0}};
    job.project.stock[0].at_home = {{.length = "6 m"}};
    const auto plan = tests::plan_of(job);
    CHECK(plan.cost == 3000);
    CHECK(plan.bars.size() == 2);
    CHECK(plan.bars[0].from == model::BarFrom::home);
}

TEST_CASE("the last piece is one that the vice holds, where there is one", "[model][schedule]") {
    auto job = tests::saw_job({2000, 40});
    job.project.stock[0].bars = {{.length = "2053 mm", .price = 10.0}};
    job.resolved.shop.least_held = mm(76);
    // 2000 + 3 + 40 between the trims of 5 mm fills the bar: with the short one last the vice would
    // have 45 mm to hold.
    const auto plan = tests::plan_of(job);
    REQUIRE(plan.bars.size() == 1);
    CHECK(job.resolved.pieces[plan.bars[0].cuts[0].piece].length == mm(40));
    CHECK(job.resolved.pieces[plan.bars[0].cuts[1].piece].length == mm(2000));
    // Where nothing is long enough it is cut all the same.
    job.resolved.shop.least_held = mm(2100);
    CHECK(tests::plan_of(job).left_out.empty());
}

TEST_CASE("first fit gives way to the nest where it runs out of bars", "[model][schedule]") {
    // Longest first leaves 460 + 450 and 380 + 340 + 170 behind, and no room for 160; 460 + 380 +
    // 160 and 450 + 340 + 170 do.
    auto job = tests::saw_job({460, 450, 380, 340, 170, 160});
    job.project.stock[0].bars = {{.length = "1013 mm", .limit = 2}};
    const auto plan = tests::plan_of(job, model::PlanEffort::first_fit);
    CHECK(plan.left_out.empty());
    CHECK(plan.bars.size() == 2);
}

TEST_CASE(
    "on random lengths every piece is cut once, no bar is overrun, and first fit is not "
    "cheaper",
    "[model][schedule][nested]") {
    std::mt19937 random(20261126);
    const auto below = [&](int count) {
        return static_cast<int>(random() % static_cast<unsigned>(count));
    };
    for (int run = 0; run < 60; ++run) {
        std::vector<int> lengths;
        for (int i = 0; i < 4 + below(30); ++i) lengths.push_back(80 + below(2200));
        auto job = tests::saw_job(lengths);
        job.project.stock[0].bars = {{.length = "3 m", .price = 21.0},
                                     {.length = "4877 mm", .price = 32.9},
                                     {.length = "6096 mm", .price = 38.0}};
        if (below(2) == 0) job.project.stock[0].offcuts = {{.length = "1400 mm", .count = 2}};
        const auto plan = tests::plan_of(job);
        const auto first = tests::plan_of(job, model::PlanEffort::first_fit);
        CHECK(plan.cost <= first.cost);
        CHECK(plan.least_cost <= plan.cost);
        std::multiset<model::Index> cut;
        for (const auto& bar : plan.bars) {
            Nm from = mm(5);
            for (const auto& it : bar.cuts) {
                cut.insert(it.piece);
                CHECK(it.start == from);
                from += job.resolved.pieces[it.piece].length + mm(3);
            }
            CHECK(from - mm(3) <= bar.length - mm(5));
            CHECK(bar.next_start == from);
        }
        CHECK(cut.size() == lengths.size());
        CHECK(std::set(cut.begin(), cut.end()).size() == lengths.size());
    }
}

TEST_CASE("the stop goes from the longest setting to the shortest, over all bars",
          "[model][schedule][stops]") {
    const auto job = three_bars();
    const auto rows =
        model::bar_rows(job.project, job.catalogue, job.resolved, {tests::plan_of(job)});
    const auto stops = model::stop_rows(job.project, job.catalogue, job.resolved, rows);
    int pieces = 0;
    for (std::size_t i = 0; i < stops.size(); ++i) {
        pieces += stops[i].pieces;
        if (i == 0) continue;
        CHECK(stops[i].length <= stops[i - 1].length);
        CHECK((stops[i].setting == stops[i - 1].setting) ==
              (stops[i].length == stops[i - 1].length));
    }
    CHECK(pieces == 15);
    CHECK(stops.back().setting == 3);
}

TEST_CASE("where the saw makes both hands alike the stop still counts the opposite ones",
          "[model][schedule][stops]") {
    auto job = three_bars();
    for (std::size_t i = 0; i < job.resolved.pieces.size(); ++i)
        job.resolved.pieces[i].hand = i % 2 == 0 ? model::Hand::as_drawn : model::Hand::opposite;
    const auto rows =
        model::bar_rows(job.project, job.catalogue, job.resolved, {tests::plan_of(job)});
    std::map<std::pair<int, model::Index>, int> expected;  // by bar and mark
    for (const auto& row : rows)
        if (job.resolved.pieces[row.piece].hand == model::Hand::opposite)
            ++expected[{row.bar, row.mark}];
    int opposite = 0;
    for (const auto& stop : model::stop_rows(job.project, job.catalogue, job.resolved, rows)) {
        CHECK(stop.hand == model::Hand::none);
        CHECK(stop.opposite == expected[{stop.bar, stop.mark}]);
        opposite += stop.opposite;
    }
    CHECK(opposite == 7);
}

TEST_CASE("a bar's lines in nest.csv follow each other from its datum end to its offcut",
          "[model][schedule][stops]") {
    auto job = tests::saw_job({1000, 500});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    job.resolved.shop.least_offcut = mm(300);
    const auto rows =
        model::bar_rows(job.project, job.catalogue, job.resolved, {tests::plan_of(job)});
    const auto table = model::nest_csv(job.project, job.catalogue, job.resolved, rows);
    CHECK(table.find("1,buy,angle 1 x 1 x 1/8") != std::string::npos);
    // 5 trimmed, 1000, a kerf of 3, 500 and another one: 1489 are left.
    CHECK(table.find(",1489,") != std::string::npos);
    CHECK(table.find("of bar 1") != std::string::npos);
    job.resolved.shop.least_offcut = mm(1500);
    CHECK(model::nest_csv(job.project, job.catalogue, job.resolved, rows).find("scrap") !=
          std::string::npos);
}

// 6000 less 10 at each end and 3 kerfs leaves 5971 mm for four pieces: 1492.7475 mm each fit, but
// not as whole tenths of a millimetre rounded up.
TEST_CASE("pieces that fit exactly, off the grid of the saw, take one bar",
          "[model][schedule][nested]") {
    auto job = tests::saw_job({1, 1, 1, 1});
    for (auto& piece : job.resolved.pieces) piece.length = 1'492'747'500;
    job.project.stock[0].bars = {{.length = "6 m", .price = 30.0}};
    job.resolved.shop.end_trim = mm(10);
    const auto plan = tests::plan_of(job);
    CHECK(plan.cost == 3000);
    CHECK(plan.is_cheapest);
}

TEST_CASE("off the grid of the saw nothing is called cheapest that a bound does not hold for",
          "[model][schedule][nested]") {
    std::mt19937 random(7);
    for (int run = 0; run < 25; ++run) {
        std::vector<int> lengths(6 + random() % 8, 1);
        auto job = tests::saw_job(lengths);
        job.project.stock[0].bars = {{.length = "3 m", .price = 21.0},
                                     {.length = "4877 mm", .price = 32.9}};
        for (auto& piece : job.resolved.pieces) {
            piece.length = 300'000'000 + static_cast<Nm>(random() % 1'400'000'000);
        }
        const auto plan = tests::plan_of(job);
        const auto first = tests::plan_of(job, model::PlanEffort::first_fit);
        CHECK(plan.cost <= first.cost);
        CHECK(plan.least_cost <= plan.cost);
        CHECK(plan.is_cheapest == (plan.least_cost == plan.cost));
    }
}

TEST_CASE("of an odd half the other one is paid for, and nothing is called cheapest for less",
          "[model][schedule][nested]") {
    auto job = tests::saw_job({2000});
    const auto halves = [](const model::Stock&) {
        model::BarSupply supply;
        supply.offers = {{.length = mm(2998), .left = 10, .price = 1600, .halved_from = mm(6000)}};
        return supply;
    };
    const auto plan =
        model::bar_plans(job.project, job.catalogue, job.resolved, {.supply = halves}).at(0);
    CHECK(plan.cost == 3200);
    CHECK_FALSE(plan.is_cheapest);
    CHECK(plan.least_cost == 1600);
}

TEST_CASE("no odd half is bought where something else costs less than its whole bar",
          "[model][schedule][nested]") {
    // A whole bar of 6 m is 25.00, so that a half looks cheaper than 3 m for 14.00.
    const auto plan_of = [](const std::vector<int>& pieces) {
        const auto job = tests::saw_job(pieces);
        const auto halves_or_short = [](const model::Stock&) {
            return model::BarSupply{
                .offers = {{.length = mm(2998), .left = 99, .price = 1250, .halved_from = mm(6000)},
                           {.length = mm(3000), .left = 99, .price = 1400}}};
        };
        return model::bar_plans(job.project, job.catalogue, job.resolved,
                                {.supply = halves_or_short})
            .at(0);
    };
    const auto one = plan_of({2900});
    CHECK(one.cost == 1400);
    CHECK(bought(one) == std::map<Nm, int>{{mm(3000), 1}});
    CHECK(one.least_cost == 1250);
    CHECK_FALSE(one.is_cheapest);
    CHECK(one.supply.offers.front().left == 99);
    const auto three = plan_of({2900, 2900, 2900});
    CHECK(three.cost == 2500 + 1400);
    CHECK(bought(three) == std::map<Nm, int>{{mm(2998), 2}, {mm(3000), 1}});
    const auto two = plan_of({2900, 2900});
    CHECK(two.cost == 2500);
    CHECK(two.is_cheapest);
}

TEST_CASE("a bar at the saw whose length cannot be read stops no nest",
          "[model][schedule][nested]") {
    auto job = tests::saw_job({1000, 1000});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    job.project.stock[0].at_saw = {{.length = "gone"}};
    const auto plan = tests::plan_of(job);
    CHECK(plan.cost == 3000);
    CHECK(plan.is_cheapest);
    CHECK(plan.supply.refused.size() == 1);
}

TEST_CASE("two stocks of one section share what a supplier has", "[model][schedule][nested]") {
    auto job = tests::saw_job({2500, 2500, 2500, 2500});
    job.project.stock = {job.project.stock[0], job.project.stock[0]};
    job.project.stock[1].name = "the same, for the rails";
    job.resolved.pieces[2].stock = job.resolved.pieces[3].stock = 1;
    const auto plans_of = [&](int limit) {
        const model::OfferedBar long_bar{.length = mm(5100), .left = limit, .price = 3000};
        const model::OfferedBar short_bar{.length = mm(2600), .left = 100, .price = 1900};
        return model::bar_plans(job.project, job.catalogue, job.resolved,
                                {.supply = [&](const model::Stock&) {
                                    return model::BarSupply{.offers = {long_bar, short_bar}};
                                }});
    };
    // Of two long bars each stock takes one. Where there is one, the other stock buys short ones,
    // which nobody has proven to be cheapest for both together.
    const auto enough = plans_of(2);
    REQUIRE(enough.size() == 2);
    CHECK(bought(enough[0]) == std::map<Nm, int>{{mm(5100), 1}});
    CHECK(bought(enough[1]) == std::map<Nm, int>{{mm(5100), 1}});
    CHECK(enough[1].is_cheapest);
    const auto scarce = plans_of(1);
    REQUIRE(scarce.size() == 2);
    CHECK(bought(scarce[0]) == std::map<Nm, int>{{mm(5100), 1}});
    CHECK(bought(scarce[1]) == std::map<Nm, int>{{mm(2600), 2}});
    CHECK(scarce[1].cost == 3800);
    CHECK(scarce[1].least_cost == 3000);
    CHECK_FALSE(scarce[1].is_cheapest);
}

TEST_CASE("four bars in halves cost what four bars cost, and free cuts come off",
          "[model][schedule][nested]") {
    // Eight pieces, each of a half: 4 x (21.75 + 1.50) = 93.00, by hand.
    const auto job = tests::saw_job({2900, 2900, 2900, 2900, 2900, 2900, 2900, 2900});
    const auto plan_with = [&](int free_cuts) {
        const model::OfferedBar half{.length = mm(2998),
                                     .left = 100,
                                     .price = 1163,
                                     .halved_from = mm(6000),
                                     .halved_price = 2325};
        return model::bar_plans(job.project, job.catalogue, job.resolved,
                                {.supply =
                                     [&](const model::Stock&) {
                                         return model::BarSupply{.offers = {half},
                                                                 .free_cuts = free_cuts,
                                                                 .cut_fee = 150};
                                     }})
            .at(0);
    };
    const auto paid = plan_with(0);
    CHECK(paid.cost == 9300);
    CHECK(paid.least_cost == 9300);
    CHECK(paid.is_cheapest);
    const auto two_free = plan_with(2);
    CHECK(two_free.cost == 9000);
    CHECK(two_free.is_cheapest);  // both free cuts are used
    const auto five_free = plan_with(5);
    CHECK(five_free.cost == 8700);
    CHECK(five_free.is_cheapest);  // no plan costs less though no cut cost anything
}

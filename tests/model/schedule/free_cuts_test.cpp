// Cuts that cost nothing, and bars that a seller has only once, planned over all stocks.
#include "model/buying/purchase_made.h"
#include "model/buying/what_if.h"
#include "model/schedule/bar_plan.h"
#include "model/schedule/bar_work.h"

#include "tests/model/schedule/halves_job.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace model;
using tests::half_of_each;
using tests::halves_alone;
using tests::halves_or_short;
using tests::mm;

namespace {

// Two pieces of each stock that fill a half each.
tests::SmallJob two_of_each(std::size_t stocks) {
    auto job = tests::saw_job(std::vector<int>(2 * stocks, 2900));
    job.project.stock.assign(stocks, model::Stock(job.project.stock[0]));
    for (std::size_t i = 0; i < stocks; ++i) {
        job.project.stock[i].name = "stock " + std::to_string(i);
        job.project.stock[i].section = "section " + std::to_string(i);
        const auto stock = static_cast<Index>(i);
        job.resolved.pieces[2 * i].stock = job.resolved.pieces[2 * i + 1].stock = stock;
    }
    return job;
}

Cents cost_of(const std::vector<BarPlan>& plans) {
    Cents cost = 0;
    for (const auto& plan : plans) cost += plan.cost;
    return cost;
}

bool are_proven(const std::vector<BarPlan>& plans) {
    return std::ranges::all_of(plans, &BarPlan::is_cheapest);
}

std::vector<BarPlan> plans_of(const tests::SmallJob& job,
                              const std::function<BarSupply(const Stock&)>& supply) {
    return bar_plans(job.project, job.catalogue, job.resolved, {.supply = supply});
}

}  // namespace

TEST_CASE("a cut that is free is counted on when bars are chosen", "[model][schedule][free cuts]") {
    const auto job = two_of_each(1);
    const auto paid = plans_of(job, [](const Stock&) { return halves_or_short(0); });
    CHECK(cost_of(paid) == 2400);  // two short bars; a long one cut would be 25.00
    const auto free = plans_of(job, [](const Stock&) { return halves_or_short(1); });
    CHECK(cost_of(free) == 2000);
    CHECK(are_proven(free));
    CHECK(free[0].bars[0].halved_from == mm(6000));
    CHECK(free[0].supply.offers[0].halved_price == 2500);  // as it is sold
}

TEST_CASE("the free cuts of an order are used once, over all stocks",
          "[model][schedule][free cuts]") {
    const auto job = two_of_each(3);
    const auto cost = [&](int free_cuts) {
        return cost_of(plans_of(job, [=](const Stock&) { return halves_or_short(free_cuts); }));
    };
    // By hand: 24.00 for each stock in short bars, 20.00 for each that has a free cut.
    CHECK(cost(0) == 7200);
    CHECK(cost(1) == 6800);
    CHECK(cost(2) == 6400);
    CHECK(cost(3) == 6000);
    CHECK(cost(9) == 6000);
    CHECK(are_proven(plans_of(job, [](const Stock&) { return halves_or_short(3); })));
    // That no plan costs less than 68.00 follows from neither bound, so it is not claimed.
    const auto one = plans_of(job, [](const Stock&) { return halves_or_short(1); });
    CHECK_FALSE(are_proven(one));
    for (const auto& plan : one) CHECK(plan.least_cost <= plan.cost);
}

TEST_CASE("where halves of one bar are all there is, whole bars are proven the cheapest",
          "[model][schedule][free cuts]") {
    // One piece fills a half: by hand, pieces / 2 bars, rounded up, of 25.00 or, uncut fee, 20.00.
    for (const int pieces : {1, 2, 3, 4, 5}) {
        const auto job = tests::saw_job(std::vector<int>(static_cast<std::size_t>(pieces), 2900));
        const int bars = (pieces + 1) / 2;
        for (const int free : {0, 1, 9}) {
            CAPTURE(pieces, free);
            const auto plans = plans_of(job, [=](const Stock&) { return halves_alone(free); });
            REQUIRE(plans.size() == 1);
            CHECK(plans[0].cost == 2500 * bars - 500 * std::min(free, bars));
            CHECK(plans[0].least_cost == plans[0].cost);
            CHECK(plans[0].is_cheapest);
        }
    }
}

TEST_CASE("without a length the free cut goes where it saves, and that is reckoned with",
          "[model][schedule][free cuts][what if]") {
    const auto job = two_of_each(2);
    const PlanWish wish{.supply = [](const Stock&) { return halves_or_short(1); }};
    const auto plans = bar_plans(job.project, job.catalogue, job.resolved, wish);
    REQUIRE(cost_of(plans) == 4400);
    const auto all = what_if_without(job.project, job.catalogue, job.resolved, plans, wish);
    REQUIRE(all.size() == 4);
    const auto halved = std::ranges::find_if(
        all, [](const WithoutLength& it) { return it.halved_from > 0 && it.used > 0; });
    REQUIRE(halved != all.end());
    // The stock asked alone would pay 4.00 more; the other one takes the free cut instead.
    CHECK(halved->with == 4400);
    CHECK(halved->cost == 4400);
}

TEST_CASE("a seller's last long bar goes to the stock that cannot do without it",
          "[model][schedule][free cuts]") {
    auto job = tests::saw_job({5000, 2500});
    job.project.stock = {job.project.stock[0], job.project.stock[0]};
    job.project.stock[1].name = "the same, for the rails";
    job.resolved.pieces[0].stock = 1;
    const auto supply = [](const Stock&) {
        return BarSupply{.offers = {{.length = mm(5100), .left = 1, .price = 3000},
                                    {.length = mm(2600), .left = 9, .price = 3100}}};
    };
    const PlanWish wish{.supply = supply};
    const auto plans = bar_plans(job.project, job.catalogue, job.resolved, wish);
    REQUIRE(plans.size() == 2);
    for (const auto& plan : plans) CHECK(plan.left_out.empty());
    CHECK(cost_of(plans) == 6100);
    // One row of the seller's list stands for both stocks, and is told once.
    const auto all = what_if_without(job.project, job.catalogue, job.resolved, plans, wish);
    REQUIRE(all.size() == 2);
    CHECK(all[0].used == 1);
    CHECK_FALSE(all[0].cost);
    CHECK(all[1].used == 1);
    CHECK_FALSE(all[1].cost);
}

namespace {

int bars_in(const Estimate& estimate) {
    int bars = 0;
    for (const auto& line : estimate.lines) bars += line.kind == BuyKind::bar ? line.count : 0;
    return bars;
}

// Halves that come home with the purchase and are cut from by nobody.
int halves_at_home(const tests::SmallJob& job, const std::vector<BarPlan>& plans) {
    auto project = job.project;
    for (const auto& edit : bars_bought(project, job.catalogue, job.resolved, plans)) {
        auto changed = apply(project, edit);
        if (!changed) FAIL(engine::to_text(changed.error()));
        project = std::move(changed).value();
    }
    int halves = 0;
    for (const auto& stock : project.stock) {
        for (const auto& it : stock.at_home) halves += it.count;
    }
    return halves;
}

}  // namespace

TEST_CASE("two odd halves of two stocks are one bar: in cost, free cuts, estimate and at home",
          "[model][schedule][free cuts]") {
    const auto stocks = GENERATE(1, 2, 3, 4);
    const auto free_cuts = GENERATE(0, 1);
    CAPTURE(stocks, free_cuts);
    auto job = half_of_each(static_cast<std::size_t>(stocks));
    for (auto& stock : job.project.stock) stock.at_home.clear();
    const auto plans = plans_of(job, [=](const Stock&) { return halves_alone(free_cuts); });
    const int bars = (stocks + 1) / 2;
    CHECK(cost_of(plans) == 2500 * bars - 500 * free_cuts);
    // Of an odd number the last half is paid for and not used, which of one stock is proven to be
    // the least: a whole bar costs that. Of several nobody proves it.
    CHECK(are_proven(plans) == (stocks % 2 == 0 || stocks == 1));
    PriceList prices;
    prices.bars = {{.section = job.project.stock[0].section,
                    .alloy = job.project.stock[0].alloy,
                    .length = engine::Length::from_nm(mm(6000)),
                    .price = 2000}};
    prices.terms.cutting_in_half = 500;
    prices.terms.free_cuts = free_cuts;
    const Supplier supplier{.name = "yard", .way = WayHome::fetched};
    const auto estimate =
        estimate_of(job.project, job.catalogue, job.resolved, plans, {&supplier, &prices});
    CHECK(bars_in(estimate) == bars);
    CHECK(halves_at_home(job, plans) == stocks % 2);
}

TEST_CASE("a plan that leaves pieces out is never called cheapest",
          "[model][schedule][free cuts]") {
    const auto job = half_of_each(2);
    const auto scarce = [](int free_cuts) {
        return [=](const Stock&) {
            auto supply = halves_alone(free_cuts);
            supply.offers[0].left = 1;
            return supply;
        };
    };
    for (const int free_cuts : {0, 1}) {
        CAPTURE(free_cuts);
        std::size_t short_of = 0;
        for (const auto& plan : plans_of(job, scarce(free_cuts))) {
            if (plan.left_out.empty()) continue;
            ++short_of;
            CHECK_FALSE(plan.is_cheapest);
        }
        CHECK(short_of == 1);
    }
}

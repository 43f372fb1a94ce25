// Stocks of one section and alloy are cut from the same bars of a seller, who has each of them
// once.
#include "model/buying/supply_from.h"
#include "model/schedule/bar_plan.h"
#include "model/schedule/findings.h"

#include "tests/model/schedule/saw_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>
#include <string>
#include <vector>

using namespace model;
using tests::mm;

namespace {

// The pieces of each stock; all stocks are of one section and alloy, and state a bar of 1 m each.
tests::SmallJob job_of(const std::vector<std::vector<int>>& lengths_mm) {
    std::vector<int> all;
    for (const auto& of_stock : lengths_mm) all.insert(all.end(), of_stock.begin(), of_stock.end());
    auto job = tests::saw_job(all);
    job.project.stock.assign(lengths_mm.size(), Stock(job.project.stock[0]));
    std::size_t piece = 0;
    for (std::size_t i = 0; i < lengths_mm.size(); ++i) {
        auto& stock = job.project.stock[i];
        stock.name = "stock " + std::to_string(i);
        stock.at_home.clear();
        for (std::size_t k = 0; k < lengths_mm[i].size(); ++k)
            job.resolved.pieces[piece++].stock = static_cast<Index>(i);
    }
    return job;
}

using Supply = std::function<BarSupply(const Stock&)>;

std::vector<BarPlan> plans_of(const tests::SmallJob& job, const Supply& supply, PlanEffort effort) {
    return bar_plans(job.project, job.catalogue, job.resolved, {effort, supply, {}});
}

int taken(const std::vector<BarPlan>& plans, Nm length) {
    int bars = 0;
    for (const auto& plan : plans) {
        bars += static_cast<int>(std::ranges::count_if(plan.bars, [&](const PlannedBar& bar) {
            return bar.from == BarFrom::shop && bar.length == length;
        }));
    }
    return bars;
}

std::size_t left_out(const std::vector<BarPlan>& plans) {
    std::size_t pieces = 0;
    for (const auto& plan : plans) pieces += plan.left_out.size();
    return pieces;
}

std::ptrdiff_t told_to_run_out(const tests::SmallJob& job, const Supply& supply) {
    return std::ranges::count(all_findings(job.project, job.catalogue, job.resolved, supply),
                              "not_enough_bars", &Finding::code);
}

}  // namespace

TEST_CASE("a seller's only bar is used once over two stocks, and what lacks is told",
          "[model][schedule][supply]") {
    const auto job = job_of({{2900}, {2900}});
    const auto& stock = job.project.stock[0];
    PriceList list;
    list.bars = {{.section = stock.section,
                  .alloy = stock.alloy,
                  .length = engine::Length::from_nm(mm(3000)),
                  .price = 1'000,
                  .limit = 1}};
    const Supplier yard{.name = "yard", .way = WayHome::fetched};
    const auto supply = [&](const Stock& of) {
        return supply_from(list, yard, job.project, job.resolved, of);
    };
    for (const auto effort : {PlanEffort::first_fit, PlanEffort::nested}) {
        const auto plans = plans_of(job, supply, effort);
        CHECK(taken(plans, mm(3000)) == 1);
        CHECK(left_out(plans) == 1);
    }
    CHECK(told_to_run_out(job, supply) == 1);
    list.bars[0].limit = 2;
    CHECK(told_to_run_out(job, supply) == 0);
}

TEST_CASE("that bars run out is not told where there is enough for all, whoever takes first",
          "[model][schedule][supply]") {
    // The first two pieces fill the only long bar as well, and the third needs it.
    const auto job = job_of({{2500, 2500}, {5000}});
    const auto supply = [](const Stock&) {
        return BarSupply{.offers = {{.length = mm(5100), .left = 1, .price = 2000},
                                    {.length = mm(2600), .left = 9, .price = 1900}}};
    };
    for (const auto effort : {PlanEffort::first_fit, PlanEffort::nested}) {
        const auto plans = plans_of(job, supply, effort);
        CHECK(left_out(plans) == 0);
        CHECK(taken(plans, mm(5100)) == 1);
    }
    CHECK(told_to_run_out(job, supply) == 0);
}

TEST_CASE("a stock does without a scarce bar where it has others and another stock has not",
          "[model][schedule][supply]") {
    // Alone each takes the long bar, and the second the middle one too, which is cheaper than two
    // short ones; the first then has none for its piece of 3900, whoever takes first.
    const auto job = job_of({{3900, 1400}, {5900, 1400, 1400}});
    const auto supply = [](const Stock&) {
        return BarSupply{.offers = {{.length = mm(6000), .left = 1, .price = 10'000},
                                    {.length = mm(4000), .left = 1, .price = 5'000},
                                    {.length = mm(1500), .left = 50, .price = 6'000}}};
    };
    for (const auto effort : {PlanEffort::first_fit, PlanEffort::nested}) {
        const auto plans = plans_of(job, supply, effort);
        CHECK(left_out(plans) == 0);
        CHECK(taken(plans, mm(6000)) == 1);
        CHECK(taken(plans, mm(4000)) == 1);
        CHECK(taken(plans, mm(1500)) == 3);
        for (const auto& plan : plans) CHECK(plan.supply.offers[1].left == 1);  // as it was before
    }
    CHECK(told_to_run_out(job, supply) == 0);
}

TEST_CASE("where a seller's list is not read each stock has the bars that it states itself",
          "[model][schedule][supply]") {
    const auto job = job_of({{2900}, {2900}});
    const auto supply = [](const Stock&) {
        return BarSupply{.offers = {{.length = mm(3000), .left = 1}},
                         .list_not_read = ListNotRead{.error = {}}};
    };
    const auto plans = plans_of(job, supply, PlanEffort::nested);
    CHECK(left_out(plans) == 0);
    CHECK(taken(plans, mm(3000)) == 2);
}

TEST_CASE("no stocks together take more bars than a seller has", "[model][schedule][supply]") {
    const auto seed = GENERATE(range(0U, 60U));
    CAPTURE(seed);
    std::mt19937 random(seed);
    const auto up_to = [&](int most) {
        return static_cast<int>(random() % (static_cast<unsigned>(most) + 1U));
    };
    std::vector<std::vector<int>> lengths(2U + static_cast<std::size_t>(up_to(2)));
    for (auto& of_stock : lengths) {
        const int pieces = 1 + up_to(4);
        for (int i = 0; i < pieces; ++i) of_stock.push_back(300 + 50 * up_to(100));
    }
    BarSupply has{.offers = {{.length = mm(6000), .left = 1 + up_to(3), .price = 3000},
                             {.length = mm(3000), .left = up_to(4), .price = 1600},
                             {.length = mm(1500), .left = up_to(6), .price = 900}}};
    const auto job = job_of(lengths);
    const Supply supply = [&](const Stock&) { return has; };
    const auto quick = plans_of(job, supply, PlanEffort::first_fit);
    const auto nested = plans_of(job, supply, PlanEffort::nested);
    for (const auto& offer : has.offers) {
        CHECK(taken(quick, offer.length) <= offer.left);
        CHECK(taken(nested, offer.length) <= offer.left);
    }
    // What is told as a finding is told by the quick plans.
    CHECK(left_out(nested) <= left_out(quick));
    CHECK((told_to_run_out(job, supply) > 0) == (left_out(quick) > 0));
}

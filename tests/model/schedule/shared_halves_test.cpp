// A bar that the seller cuts in half serves two stocks: which two, and what comes to the saw.
#include "model/schedule/shared_halves.h"

#include "model/schedule/saw_bars.h"

#include "tests/model/schedule/halves_job.h"

#include <catch2/catch.hpp>

using namespace model;
using tests::half_of_each;
using tests::halves_alone;
using tests::mm;

namespace {

HalfBar half(Index stock, Cents price, Nm whole = mm(6000)) {
    return {.stock = stock, .length = (whole - mm(3)) / 2, .whole = whole, .price = price};
}

std::vector<Index> others(const std::vector<OddHalf>& odd) {
    std::vector<Index> all;
    for (const auto& it : odd) all.push_back(it.other);
    return all;
}

// Each of one piece, which fills half a bar of one section and alloy.
struct Halves {
    tests::SmallJob job;
    std::vector<BarPlan> plans;
    std::vector<SawBar> bars;

    explicit Halves(std::size_t stocks) : job{half_of_each(stocks)} {
        for (auto& stock : job.project.stock) stock.at_home.clear();
        plans = bar_plans(job.project, job.catalogue, job.resolved,
                          {.supply = [](const Stock&) { return halves_alone(0); }});
        bars = saw_bars(job.project, job.catalogue, job.resolved, plans);
    }

    Project ticked(const std::vector<SawTick>& ticks) const {
        const auto edits =
            cuts_ticked(job.project, job.catalogue, job.resolved, plans, ticks, CutState::cut);
        REQUIRE(edits);
        auto project = job.project;
        for (const auto& edit : *edits) {
            auto changed = apply(std::move(project), edit);
            REQUIRE(changed);
            project = std::move(changed).value();
        }
        return project;
    }
};

}  // namespace

TEST_CASE("of stocks that each have an odd half the first two share a bar, then the next two",
          "[model][schedule][halves]") {
    Project project;
    project.stock.assign(5, Stock{.section = "angle", .alloy = "6063"});
    const auto paired = [&](const std::vector<HalfBar>& halves) {
        return others(odd_halves(project, halves));
    };
    CHECK(paired({half(0, 9), half(1, 9), half(2, 9)}) == std::vector<Index>{1, 0, no_index});
    CHECK(paired({half(0, 9), half(1, 9), half(2, 9), half(4, 9)}) ==
          std::vector<Index>{1, 0, 4, 2});
    // Two halves of one stock are a bar of its own.
    CHECK(paired({half(0, 9), half(1, 9), half(1, 9), half(2, 9)}) == std::vector<Index>{2, 0});
    CHECK(paired({half(3, 9), half(3, 9), half(3, 9)}) == std::vector<Index>{no_index});
}

TEST_CASE("halves of other goods are not of one bar", "[model][schedule][halves]") {
    Project project;
    project.stock.assign(3, Stock{.section = "angle", .alloy = "6063"});
    const std::vector<Index> nobody{no_index, no_index};
    CHECK(others(odd_halves(project, {half(0, 9), half(1, 8)})) == nobody);
    CHECK(others(odd_halves(project, {half(0, 9), half(1, 9, mm(5000))})) == nobody);
    // Of two kinds of bar a stock shares one with each of the others.
    const auto two =
        odd_halves(project, {half(0, 9), half(0, 9, mm(5000)), half(1, 9), half(2, 9, mm(5000))});
    CHECK(others(two) == std::vector<Index>{1, 2, 0, 0});
    project.stock[1].alloy = "6061";
    CHECK(others(odd_halves(project, {half(0, 9), half(1, 9)})) == nobody);
}

TEST_CASE("a cut brings the stock that has the other half of its bar, and no third one",
          "[model][schedule][halves]") {
    const Halves halves(3);
    REQUIRE(halves.bars.size() == 3);
    const int bar = GENERATE(1, 2, 3);
    CAPTURE(bar);
    const SawTick tick{bar, 0};
    const auto after = halves.ticked({tick});
    const bool is_third = bar == 3;
    CHECK(after.stock[0].at_saw.size() == (is_third ? 0U : 1U));
    CHECK(after.stock[1].at_saw.size() == (is_third ? 0U : 1U));
    CHECK(after.stock[2].at_saw.size() == (is_third ? 1U : 0U));
    // The half that nobody shares comes home with the third.
    CHECK(after.stock[0].at_home.empty());
    CHECK(after.stock[1].at_home.empty());
    REQUIRE(after.stock[2].at_home.size() == (is_third ? 1U : 0U));
    const auto place = place_when_ticked(halves.job.project, halves.bars, tick, {tick});
    const auto& stock = after.stock[static_cast<std::size_t>(bar) - 1];
    CHECK(place.stock == stock.name);
    CHECK(stock.at_saw.at(place.bar).cuts.at(place.cut).state == CutState::cut);
}

TEST_CASE("bars come with a cut in the same number as with the whole purchase",
          "[model][schedule][halves]") {
    const Halves halves(3);
    auto all = halves.job.project;
    for (const auto& edit :
         bars_bought(all, halves.job.catalogue, halves.job.resolved, halves.plans))
        all = apply(std::move(all), edit).value();
    const auto ticked = halves.ticked({{1, 0}, {3, 0}});
    for (std::size_t i = 0; i < all.stock.size(); ++i) {
        CHECK(ticked.stock[i].at_saw.size() == all.stock[i].at_saw.size());
        CHECK(ticked.stock[i].at_home == all.stock[i].at_home);
    }
}

TEST_CASE("whose bars count as bought by a cut is known beforehand", "[model][schedule][halves]") {
    const Halves halves(3);
    const auto bought = [&](int bar) {
        return stocks_bought_by(halves.job.project, halves.bars, {{bar, 0}});
    };
    CHECK(bought(1) == std::vector<Index>{0, 1});
    CHECK(bought(2) == std::vector<Index>{1, 0});
    CHECK(bought(3) == std::vector<Index>{2});
}

// From the purchase to the last cut: the plan stays what it is on paper.
#include "model/schedule/bar_work.h"

#include "model/schedule/findings.h"
#include "model/schedule/saw_bars.h"
#include "model/schedule/saw_seen.h"

#include "tests/model/schedule/saw_steps.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace tests;

namespace {

// The pieces of each bar that are still to be cut.
std::vector<std::vector<model::Index>> cuts_of(const model::BarPlan& plan) {
    std::vector<std::vector<model::Index>> all;
    for (const auto& bar : plan.bars) {
        all.emplace_back();
        for (const auto& cut : bar.cuts) all.back().push_back(cut.piece);
    }
    return all;
}

}  // namespace

TEST_CASE("once the bars are bought nothing is to buy, and the cuts are the same",
          "[model][schedule][saw]") {
    auto job = two_bars();
    const auto before = tests::plan_of(job);
    REQUIRE(before.bars.size() == 2);
    buy(job);
    const auto after = tests::plan_of(job);
    CHECK(after.cost == 0);
    CHECK(after.is_cheapest);
    CHECK(cuts_of(after) == cuts_of(before));
    for (const auto& bar : after.bars) CHECK(bar.from == model::BarFrom::saw);
    CHECK(model::bars_bought(job.project, job.catalogue, job.resolved, {after}).empty());
    CHECK(job.project.stock[0].at_saw[0].length == "3 m");
}

TEST_CASE("an offcut that the plan takes leaves the rack with the purchase",
          "[model][schedule][saw]") {
    auto job = two_bars();
    job.project.stock[0].offcuts = {{.length = "1600 mm", .count = 2}, {.length = "100 mm"}};
    const auto plan = tests::plan_of(job);
    const auto used =
        std::ranges::count(plan.bars, model::BarFrom::offcut, &model::PlannedBar::from);
    REQUIRE(used == 2);
    buy(job);
    REQUIRE(job.project.stock[0].offcuts.size() == 1);
    CHECK(job.project.stock[0].offcuts[0].length == "100 mm");
    CHECK(std::ranges::count(job.project.stock[0].at_saw, true, &model::BarAtSaw::was_offcut) == 2);
}

TEST_CASE("what has been cut is cut no more, and the rest of the plan stays",
          "[model][schedule][saw]") {
    auto job = two_bars();
    buy(job);
    const auto before = cuts_of(tests::plan_of(job));
    mark_cut(job, 0, 0, model::CutState::cut);
    const auto plan = tests::plan_of(job);
    auto expected = before;
    expected[0].erase(expected[0].begin());
    CHECK(cuts_of(plan) == expected);
    CHECK(plan.cut == std::vector<model::Index>{before[0][0]});
    mark_cut(job, 0, 0, model::CutState::planned);
    CHECK(cuts_of(tests::plan_of(job)) == before);
}

TEST_CASE("a spoiled piece is cut again from what is left, and no other cut moves",
          "[model][schedule][saw]") {
    auto job = two_bars();
    buy(job);
    const auto before = cuts_of(tests::plan_of(job));
    // The last of the bar that keeps the longer rest.
    mark_cut(job, 1, before[1].size() - 1, model::CutState::spoiled);
    const auto plan = tests::plan_of(job);
    std::vector<model::Index> all;
    for (const auto& cuts : cuts_of(plan)) all.insert(all.end(), cuts.begin(), cuts.end());
    CHECK(all.size() == 5);
    const auto now = cuts_of(plan);
    CHECK(std::equal(before[0].begin(), before[0].end(), now[0].begin()));
}

TEST_CASE("a mistake that nothing at hand makes good takes one bar more",
          "[model][schedule][saw]") {
    auto job = tests::saw_job({1400, 1400});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    buy(job);
    mark_cut(job, 0, 0, model::CutState::spoiled);
    const auto plan = tests::plan_of(job);
    CHECK(plan.cost == 3000);
    REQUIRE(plan.bars.size() == 2);
    CHECK(plan.bars[0].from == model::BarFrom::saw);
    CHECK(plan.bars[1].from == model::BarFrom::shop);
}

TEST_CASE("cuts planned anew leave made ones alone and give untouched bars back",
          "[model][schedule][saw]") {
    auto job = two_bars();
    job.project.stock[0].offcuts = {{.length = "950 mm"}};
    buy(job);
    const auto bars = job.project.stock[0].at_saw.size();
    const auto place =
        std::ranges::find(job.project.stock[0].at_saw, false, &model::BarAtSaw::was_offcut) -
        job.project.stock[0].at_saw.begin();
    mark_cut(job, static_cast<std::size_t>(place), 0, model::CutState::cut);
    make(job, model::cuts_planned_anew(job.project));
    const auto& stock = job.project.stock[0];
    REQUIRE(stock.at_saw.size() == 1);
    CHECK(stock.at_saw[0].cuts.size() == 1);
    int idle = 0;
    for (const auto& it : stock.at_home) idle += it.count;
    for (const auto& it : stock.offcuts) idle += it.count;
    CHECK(static_cast<std::size_t>(idle) == bars - 1);
    CHECK(stock.offcuts.size() == 1);
    CHECK(tests::plan_of(job).cost == 0);
}

TEST_CASE("bars that are cut up are done with, and what is worth keeping goes to the rack",
          "[model][schedule][saw]") {
    auto job = tests::saw_job({1400, 400});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    job.resolved.shop.least_offcut = mm(300);
    buy(job);
    CHECK(model::offcuts_racked(job.project, job.catalogue, job.resolved).empty());
    mark_cut(job, 0, 0, model::CutState::cut);
    mark_cut(job, 0, 1, model::CutState::cut);
    make(job, model::offcuts_racked(job.project, job.catalogue, job.resolved));
    const auto& stock = job.project.stock[0];
    CHECK(stock.at_saw[0].is_used_up);
    REQUIRE(stock.offcuts.size() == 1);
    // 3000 - 5 - 1400 - 3 - 400 - 3
    CHECK(model::stated_length(job.project, job.resolved, stock.offcuts[0].length).value() ==
          mm(1189));
    CHECK(model::offcuts_racked(job.project, job.catalogue, job.resolved).empty());
    const auto plan = tests::plan_of(job);
    CHECK(plan.bars.size() == 1);
    CHECK(plan.bars[0].cuts.empty());
    CHECK(plan.cut.size() == 2);
}

TEST_CASE("a piece that was cut and fits nothing any more is told", "[model][schedule][saw]") {
    auto job = two_bars();
    buy(job);
    mark_cut(job, 0, 0, model::CutState::cut);
    const auto told = [&] {
        const auto all = model::bar_findings(job.project, job.catalogue, job.resolved);
        return std::ranges::count(all, "cut_piece_unused", &model::Finding::code);
    };
    CHECK(told() == 0);
    const auto cut = tests::plan_of(job).cut.at(0);
    job.resolved.pieces[cut].length += mm(1);
    CHECK(told() == 1);
    // What was planned and is of no use leaves its place to others without a word.
    job.resolved.pieces[cut].length -= mm(1);
    for (auto& piece : job.resolved.pieces) {
        if (piece.length == mm(400)) piece.length = mm(401);
    }
    CHECK(told() == 0);
    CHECK(tests::plan_of(job).left_out.empty());
}

TEST_CASE("a cut that is not there cannot be ticked", "[model][schedule][saw]") {
    auto job = two_bars();
    buy(job);
    CHECK_FALSE(
        model::cut_marked(job.project, job.resolved, {{"angle", 0, 9}}, model::CutState::cut));
    CHECK_FALSE(
        model::cut_marked(job.project, job.resolved, {{"angle", 9, 0}}, model::CutState::cut));
    CHECK_FALSE(
        model::cut_marked(job.project, job.resolved, {{"steel", 0, 0}}, model::CutState::cut));
    CHECK_FALSE(model::cut_marked(job.project, job.resolved, {}, model::CutState::cut));
}

TEST_CASE("a tick marks the cut that was meant, whatever the other stock's bars are",
          "[model][schedule][saw]") {
    auto job = tests::saw_job({1500, 1200, 900, 1500, 1200});
    for (const model::Index i : {3U, 4U}) job.resolved.pieces[i].stock = 1;
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    job.project.stock[1].bars = {{.length = "3 m", .price = 20.0}};
    // Bars that the project itself does not state, as a supplier's are.
    const auto supply = [](const model::Stock&) {
        model::BarSupply from;
        from.offers = {{.length = mm(1600), .left = 50, .price = 1000}};
        return from;
    };
    const auto plans =
        model::bar_plans(job.project, job.catalogue, job.resolved, {.supply = supply});
    const auto bars = model::saw_bars(job.project, job.catalogue, job.resolved, plans);
    REQUIRE(bars.size() == 5);
    for (const auto& bar : bars) {
        auto ticked = model::cuts_ticked(job.project, job.catalogue, job.resolved, plans,
                                         {{bar.number, 0}}, model::CutState::cut);
        REQUIRE(ticked);
        auto after = job;
        make(after, *ticked);
        const auto seen =
            model::saw_seen(after.project, after.catalogue, after.resolved, bar.stock);
        CHECK(seen.cut == std::vector<model::Index>{bar.cuts[0].piece});
    }
    CHECK_FALSE(model::cuts_ticked(job.project, job.catalogue, job.resolved, plans, {{9, 0}},
                                   model::CutState::cut));
    CHECK_FALSE(model::cuts_ticked(job.project, job.catalogue, job.resolved, plans, {{1, 7}},
                                   model::CutState::cut));
}

TEST_CASE("who cuts from an offcut has bought no bar", "[model][schedule][saw]") {
    auto job = tests::saw_job({1400, 900});
    job.project.stock[0].bars = {{.length = "1 m", .price = 30.0}};
    job.project.stock[0].offcuts = {{.length = "1500 mm"}};
    const std::vector plans{tests::plan_of(job)};
    const auto bars = model::saw_bars(job.project, job.catalogue, job.resolved, plans);
    REQUIRE(bars.size() == 2);
    for (const auto& bar : bars) {
        auto after = job;
        const model::SawTick tick{bar.number, 0};
        const auto ticked = model::cuts_ticked(job.project, job.catalogue, job.resolved, plans,
                                               {tick}, model::CutState::cut);
        REQUIRE(ticked);
        make(after, *ticked);
        const auto& at_saw = after.project.stock[0].at_saw;
        CHECK(at_saw.size() == (bar.from == model::BarFrom::shop ? 2U : 1U));
        const auto place = model::place_when_ticked(job.project, bars, tick, {tick});
        REQUIRE(place.bar < at_saw.size());
        CHECK(at_saw[place.bar].cuts.at(place.cut).state == model::CutState::cut);
        CHECK(at_saw[place.bar].cuts.at(place.cut).mark == bar.cuts[0].mark);
    }
}

TEST_CASE("bars that lie idle stay there when others are bought", "[model][schedule][saw]") {
    auto job = tests::saw_job({1400});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    job.project.stock[0].offcuts = {{.length = "1500 mm"}, {.length = "700 mm", .count = 3}};
    make(job, model::bars_bought(job.project, job.catalogue, job.resolved,
                                 {tests::plan_of(job, model::PlanEffort::first_fit)}));
    CHECK(job.project.stock[0].at_saw.size() == 1);
    REQUIRE(job.project.stock[0].offcuts.size() == 1);
    CHECK(job.project.stock[0].offcuts[0].count == 3);
}

TEST_CASE("what has been cut stays so when the tape shows lengths in another way",
          "[model][schedule][saw]") {
    auto job = two_bars();
    job.resolved.pieces[0].ends[0].wall_back[0] = mm(11);  // notched
    buy(job);
    mark_cut(job, 0, 0, model::CutState::cut);
    const auto before = tests::plan_of(job).cut;
    REQUIRE(before.size() == 1);
    job.project.shown = {engine::TapeForm::millimetre, 16, 0, true};
    CHECK(tests::plan_of(job).cut == before);
    job.resolved.pieces[before[0]].hand = model::Hand::as_drawn;  // a mirror image came
    CHECK(tests::plan_of(job).cut == before);
}

TEST_CASE("a planned cut that is of no use any more keeps no bar from being done with",
          "[model][schedule][saw]") {
    auto job = tests::saw_job({1400, 900});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    buy(job);
    mark_cut(job, 0, 0, model::CutState::cut);
    job.resolved.pieces.pop_back();
    make(job, model::offcuts_racked(job.project, job.catalogue, job.resolved));
    CHECK(job.project.stock[0].at_saw[0].is_used_up);
}

TEST_CASE("a bar at the saw keeps its length when a dimension changes", "[model][schedule][saw]") {
    auto job = tests::saw_job({1400});
    job.project.stock[0].bars = {{.length = "mill length", .price = 30.0}};
    buy(job);
    REQUIRE(job.project.stock[0].at_saw.size() == 1);
    CHECK(job.project.stock[0].at_saw[0].length.find("mill") == std::string::npos);
}

// What lies where on a bar of which some is cut, well or badly, and a bad piece that comes back
// from the rack.
#include "model/schedule/saw_bars.h"
#include "model/schedule/stops.h"

#include "tests/model/schedule/saw_steps.h"

#include <catch2/catch.hpp>

#include <string>
#include <utility>

using namespace tests;

TEST_CASE("cuts lie as printed, whichever of them is made first", "[model][schedule][saw]") {
    auto job = two_bars();
    buy(job);
    const auto lie = [&] {
        std::vector<std::pair<std::string, engine::Length>> all;
        const std::vector plans{plan_of(job)};
        for (const auto& bar : model::saw_bars(job.project, job.catalogue, job.resolved, plans)) {
            for (const auto& cut : bar.cuts) all.emplace_back(cut.mark, cut.start);
            all.emplace_back("rest", bar.offcut);
        }
        return all;
    };
    const auto printed = lie();
    mark_cut(job, 0, 1, model::CutState::cut);
    CHECK(lie() == printed);
    mark_cut(job, 1, 2, model::CutState::cut);
    mark_cut(job, 1, 0, model::CutState::cut);
    CHECK(lie() == printed);
}

TEST_CASE("what was cut out of order is told where it lies on its bar", "[model][schedule][saw]") {
    auto job = two_bars();
    job.project.shown = {engine::TapeForm::millimetre, 16, 0, true};
    buy(job);
    const auto told = [&] {
        const std::vector plans{plan_of(job)};
        const auto rows = model::bar_rows(job.project, job.catalogue, job.resolved, plans);
        return model::nest_csv(job.project, job.catalogue, job.resolved, rows);
    };
    CHECK_THAT(told(), Catch::Contains("end trim,,,0 mm,5 mm") && !Catch::Contains("cut before"));
    const auto before = job.project.stock[0].at_saw[1].cuts;
    REQUIRE(before.size() == 3);
    mark_cut(job, 1, 1, model::CutState::cut);
    // 5 mm, 1200 mm or another one, the kerf.
    const auto first = model::stated_length(job.project, job.resolved, before[0].length).value();
    const auto second = model::stated_length(job.project, job.resolved, before[1].length).value();
    const auto from = std::to_string((mm(5 + 3) + first) / mm(1));
    const auto to = std::to_string((mm(5 + 3 + 3) + first + second) / mm(1));
    CHECK_THAT(told(), Catch::Contains("cut before,,," + from + " mm," + to + " mm"));
}

TEST_CASE("made cuts keep their room before planned ones that stand in front of them",
          "[model][schedule][saw]") {
    auto job = saw_job({1400, 1400});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    buy(job);
    mark_cut(job, 0, 1, model::CutState::cut);
    // The first one is longer now than what the other one leaves.
    job.project.stock[0].at_saw[0].cuts[0].length = "1600 mm";
    job.resolved.pieces[0].length = mm(1600);
    const auto plan = plan_of(job);
    CHECK(plan.cut.size() == 1);
    REQUIRE(plan.bars.size() == 2);
    CHECK(plan.bars[0].cuts.empty());
    CHECK(plan.bars[1].from == model::BarFrom::shop);
}

TEST_CASE("a reworked piece took its old length of the bar, unless its cut is taken back",
          "[model][schedule][saw]") {
    auto job = saw_job({1400, 900});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    buy(job);
    const auto start_of_second = [&] {
        const std::vector plans{plan_of(job)};
        const auto bars = model::saw_bars(job.project, job.catalogue, job.resolved, plans);
        return bars.at(0).cuts.at(1).start.nm();
    };
    const auto printed = start_of_second();
    auto& cut = job.project.stock[0].at_saw[0].cuts[0];
    cut.took = "1500 mm";
    CHECK(start_of_second() == printed);
    cut.state = model::CutState::cut;
    CHECK(start_of_second() == printed + mm(100));
    // What cannot be, written into the file by hand, takes the piece's own length.
    for (const auto* odd : {"-30 in", "nosuch + 1"}) {
        cut.took = odd;
        CHECK(start_of_second() == printed);
    }
}

TEST_CASE("what lies behind a piece that was cut too short goes by how long it is",
          "[model][schedule][saw]") {
    auto job = saw_job({1400, 900});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    buy(job);
    mark_cut(job, 0, 0, model::CutState::spoiled);
    const auto start_of_second = [&] {
        const std::vector plans{plan_of(job)};
        const auto bars = model::saw_bars(job.project, job.catalogue, job.resolved, plans);
        return bars.at(0).cuts.at(1).start.nm();
    };
    CHECK(start_of_second() == mm(5 + 1400 + 3));
    job.project.stock[0].at_saw[0].cuts[0].measured = "1300 mm";
    CHECK(start_of_second() == mm(5 + 1300 + 3));
    const std::vector plans{plan_of(job)};
    const auto bars = model::saw_bars(job.project, job.catalogue, job.resolved, plans);
    CHECK(bars[0].cuts[0].length == engine::Length::from_nm(mm(1300)));
    // One that was good after all is as long as it should be.
    mark_cut(job, 0, 0, model::CutState::cut);
    CHECK(start_of_second() == mm(5 + 1400 + 3));
    CHECK(job.project.stock[0].at_saw[0].cuts[0].measured.empty());
}

TEST_CASE("a bad piece on the rack leaves it when it is good after all", "[model][schedule][saw]") {
    auto job = saw_job({1400, 900, 800});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    buy(job);
    mark_cut(job, 0, 0, model::CutState::spoiled);
    auto& stock = job.project.stock[0];
    auto& cut = stock.at_saw[0].cuts[0];
    cut.measured = "1300 mm";
    cut.is_on_rack = true;
    stock.offcuts = {{.length = "130 cm", .count = 2}};
    const std::vector<model::CutPlace> it{{"angle", 0, 0}};
    SECTION("it lies there, told in other words") {
        mark_cut(job, 0, 0, model::CutState::cut);
        const auto& after = job.project.stock[0];
        REQUIRE(after.offcuts.size() == 1);
        CHECK(after.offcuts[0].count == 1);
        CHECK_FALSE(after.at_saw[0].cuts[0].is_on_rack);
    }
    const auto refusal = [&] {
        const auto good = model::cut_marked(job.project, job.resolved, it, model::CutState::cut);
        REQUIRE_FALSE(good);
        CHECK(good.error().code == engine::ErrorCode::out_of_range);
        return good.error().message;
    };
    SECTION("it is gone") {
        stock.offcuts.clear();
        CHECK_THAT(refusal(), Catch::Contains("as an offcut of 1300 mm, which is not there any "
                                              "more"));
    }
    SECTION("another piece was cut from it") {
        stock.offcuts.clear();
        stock.at_saw.push_back({.length = "1300 mm", .was_offcut = true});
        stock.at_saw.back().cuts = {{.length = "900 mm", .mark = "L900"}};
        CHECK_THAT(refusal(), Catch::Contains("plan the cuts anew first"));
        stock.at_saw.back().cuts[0].state = model::CutState::cut;
        CHECK_THAT(refusal(), Catch::Contains("L900 has been cut from that since"));
    }
}

#include "model/buying/spoiled.h"

#include "tests/model/schedule/saw_job.h"

#include <catch2/catch.hpp>

using tests::mm;

namespace {

void make(tests::SmallJob& job, const model::Edit& edit) {
    auto changed = model::apply(job.project, edit);
    if (!changed) FAIL(engine::to_text(changed.error()));
    job.project = std::move(changed).value();
}

// Bought, and its first piece cut wrong.
tests::SmallJob spoiled_job(const std::vector<int>& lengths) {
    auto job = tests::saw_job(lengths);
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    for (const auto& edit :
         model::bars_bought(job.project, job.catalogue, job.resolved, {tests::plan_of(job)})) {
        make(job, edit);
    }
    const auto spoiled =
        model::cut_marked(job.project, job.resolved, {{"angle", 0, 0}}, model::CutState::spoiled);
    REQUIRE(spoiled);
    make(job, *spoiled);
    return job;
}

std::string words(const tests::SmallJob& job, const model::SpoiledPiece& piece) {
    return model::words_of_cutting_again(
        job.project,
        model::saw_bars(job.project, job.catalogue, job.resolved, {tests::plan_of(job)}), piece,
        "crowns");
}

model::SpoiledPiece piece(int length) {
    return {{"angle", 0, 0}, "L" + std::to_string(length), engine::Length::from_nm(mm(length))};
}

bool begins(const std::string& text, const std::string& with) {
    return text.substr(0, with.size()) == with;
}

}  // namespace

TEST_CASE("a spoiled piece is cut again from what is left of a bar at the saw",
          "[model][buying][spoiled]") {
    const auto job = spoiled_job({1000});
    const auto told = words(job, piece(1000));
    CAPTURE(told);
    CHECK(begins(told, "Cut L1000 again from bar 1 at the saw, from "));
}

TEST_CASE("a spoiled piece is cut again from an offcut before a bar is bought",
          "[model][buying][spoiled]") {
    auto job = spoiled_job({2000});
    auto told = words(job, piece(2000));
    CAPTURE(told);
    CHECK(begins(told, "It is planned from bar 2, which is still to buy: "));
    CHECK(told.find("30.00 crowns") != std::string::npos);
    job.project.stock[0].offcuts = {{.length = "2200 mm"}};
    told = words(job, piece(2000));
    CHECK(begins(told, "Cut L2000 again from the offcut of "));
    job.project.stock[0].offcuts.clear();
    job.project.stock[0].at_home = {{.length = "3 m"}};
    told = words(job, piece(2000));
    CHECK(begins(told, "Cut L2000 again from the bar of "));
}

TEST_CASE("where nothing that can be had holds it again that is said", "[model][buying][spoiled]") {
    auto job = spoiled_job({2000});
    job.project.stock[0].bars.clear();
    CHECK(begins(words(job, piece(2000)), "L2000 is in no bar now"));
}

TEST_CASE("a piece is spoiled as long as its cut is", "[model][buying][spoiled]") {
    auto job = spoiled_job({1000});
    const auto is_spoiled = [&] {
        return model::is_spoiled(
            model::saw_bars(job.project, job.catalogue, job.resolved, {tests::plan_of(job)}),
            piece(1000));
    };
    CHECK(is_spoiled());
    const auto good =
        model::cut_marked(job.project, job.resolved, {{"angle", 0, 0}}, model::CutState::cut);
    REQUIRE(good);
    make(job, *good);
    CHECK_FALSE(is_spoiled());
}

TEST_CASE("of two pieces of one mark and length the one that is meant is spoiled",
          "[model][buying][spoiled]") {
    const auto job = spoiled_job({1000, 1000});
    const auto bars =
        model::saw_bars(job.project, job.catalogue, job.resolved, {tests::plan_of(job)});
    auto other = piece(1000);
    CHECK(model::is_spoiled(bars, other));
    other.place.cut = 1;
    CHECK_FALSE(model::is_spoiled(bars, other));
}

TEST_CASE("the bad piece is kept as an offcut where it is long enough",
          "[model][buying][spoiled]") {
    auto job = spoiled_job({1000});
    job.resolved.shop.least_offcut = mm(300);
    const auto kept = model::bad_piece_kept(job.project, job.resolved, piece(1000), "975 mm");
    REQUIRE(kept);
    make(job, *kept);
    make(job, *kept);
    REQUIRE(job.project.stock[0].offcuts.size() == 1);
    CHECK(job.project.stock[0].offcuts[0].length == "975 mm");
    // Its bar is 3 m long.
    CHECK_FALSE(model::bad_piece_kept(job.project, job.resolved, piece(1000), "3001 mm"));
    CHECK(model::bad_piece_kept(job.project, job.resolved, piece(1000), "2999 mm"));
    const auto scrap = model::bad_piece_kept(job.project, job.resolved, piece(1000), "290 mm");
    REQUIRE_FALSE(scrap);
    CHECK(scrap.error().message.find("it is scrap") != std::string::npos);
    CHECK_FALSE(model::bad_piece_kept(job.project, job.resolved, piece(1000), "long"));
}

TEST_CASE("the length of the bad piece is kept with its cut, on the rack or in the scrap",
          "[model][buying][spoiled]") {
    auto job = spoiled_job({1000});
    job.resolved.shop.least_offcut = mm(300);
    const auto cut = [&] { return job.project.stock[0].at_saw[0].cuts[0]; };
    SECTION("on the rack, and once more on it with another length") {
        for (const char* length : {"975 mm", "974 mm"}) {
            const auto kept = model::bad_piece_kept(job.project, job.resolved, piece(1000), length);
            REQUIRE(kept);
            make(job, *kept);
            CHECK(cut().measured == length);
            CHECK(cut().is_on_rack);
            REQUIRE(job.project.stock[0].offcuts.size() == 1);
            CHECK(job.project.stock[0].offcuts[0].length == length);
        }
    }
    SECTION("in the scrap, however short it is") {
        const auto scrap =
            model::bad_piece_measured(job.project, job.resolved, piece(1000), "9 mm");
        REQUIRE(scrap);
        make(job, *scrap);
        CHECK(cut().measured == "9 mm");
        CHECK_FALSE(cut().is_on_rack);
        CHECK(job.project.stock[0].offcuts.empty());
        CHECK_FALSE(model::bad_piece_measured(job.project, job.resolved, piece(1000), "3001 mm"));
    }
}

TEST_CASE("the cut that makes a spoiled piece again is the one that is named",
          "[model][buying][spoiled]") {
    const auto job = spoiled_job({1000});
    const auto bars =
        model::saw_bars(job.project, job.catalogue, job.resolved, {tests::plan_of(job)});
    const auto again = model::tick_of_cutting_again(job.project, bars, piece(1000));
    REQUIRE(again);
    CHECK(again->bar == 1);
    CHECK(bars[0].cuts.at(again->cut).state == model::CutState::planned);
    CHECK_FALSE(model::tick_of_cutting_again(job.project, bars, piece(900)));
}

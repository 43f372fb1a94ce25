#include "engine/files/csv.h"
#include "model/schedule/bar_plan.h"
#include "model/schedule/bar_words.h"
#include "model/schedule/bars_sold.h"
#include "model/schedule/csv_tables.h"
#include "model/schedule/stops.h"
#include "model/schedule/tables.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <string>
#include <utility>

using engine::Length;
using engine::Nm;
using namespace engine::literals;

namespace {

std::vector<model::BarRow> rows_of(const tests::SmallJob& job) {
    return model::bar_rows(job.project, job.catalogue, job.resolved,
                           model::bar_plans(job.project, job.catalogue, job.resolved));
}

// A job of nothing but pieces of the first stock, of these lengths in inches.
tests::SmallJob job_of_lengths(const std::vector<int>& inches) {
    auto job = tests::small_job();
    job.project.stock[0].offcuts.clear();
    const auto piece = job.resolved.pieces[0];
    job.resolved.pieces.clear();
    for (const int length : inches) {
        job.resolved.pieces.push_back(piece);
        job.resolved.pieces.back().length = length * Length::nm_per_inch;
    }
    return job;
}

}  // namespace

TEST_CASE("an offcut at hand is used before a new bar is bought", "[model][schedule][bars]") {
    const auto rows = rows_of(tests::small_job());
    REQUIRE(rows.size() == 5);
    CHECK(rows[0].is_offcut());
    CHECK(rows[0].bar_length == 14_in);
    CHECK(rows[0].length == 12_in);
    CHECK_FALSE(rows[1].is_offcut());
}

TEST_CASE("cuts follow one another by a kerf after the end trim", "[model][schedule][bars]") {
    const auto rows = rows_of(job_of_lengths({30, 20}));
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].start == 32_in_64);
    CHECK(rows[1].start == 30_in + 32_in_64 + 6_in_64);
    CHECK(rows[1].offcut == 96_in - (50_in + 32_in_64 + 12_in_64));
    CHECK(rows[0].offcut == rows[1].offcut);
}

TEST_CASE("a piece as long as a bar between its end trims is cut from it, a longer one is not",
          "[model][schedule][bars]") {
    auto job = job_of_lengths({95});
    CHECK(rows_of(job).size() == 1);
    ++job.resolved.pieces[0].length;
    CHECK(rows_of(job).empty());
    CHECK(model::bar_plans(job.project, job.catalogue, job.resolved)[0].too_long.size() == 1);
}

TEST_CASE("no bar is overrun, and every piece is cut once", "[model][schedule][bars]") {
    const auto job = job_of_lengths({40, 33, 61, 20, 20, 19, 47, 47, 47, 5, 90, 12, 12, 12, 30});
    const auto rows = rows_of(job);
    CHECK(rows.size() == job.resolved.pieces.size());
    std::map<int, Nm> free_from;
    for (const auto& row : rows) {
        CHECK(row.start.nm() >= free_from[row.bar]);
        free_from[row.bar] = (row.start + row.length).nm() + job.resolved.shop.kerf;
        CHECK(row.start + row.length <= row.bar_length - 32_in_64);
    }
}

TEST_CASE("a bar is bought no longer than its cuts need", "[model][schedule][bars]") {
    auto job = job_of_lengths({90, 40});
    job.project.stock[0].bars = {{.length = "8 ft"}, {.length = "4 ft"}};
    const auto rows = rows_of(job);
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].bar_length == 96_in);
    CHECK(rows[1].bar_length == 48_in);
}

TEST_CASE("a limit on bars is kept", "[model][schedule][bars]") {
    auto job = job_of_lengths({90, 90, 90});
    job.project.stock[0].bars[0].limit = 2;
    CHECK(rows_of(job).size() == 2);
    CHECK(model::bar_plans(job.project, job.catalogue, job.resolved)[0].left_out.size() == 1);
}

TEST_CASE("shims are not cut from bars", "[model][schedule][bars]") {
    const auto job = tests::small_job();
    for (const auto& row : rows_of(job)) {
        CHECK(job.resolved.pieces[row.piece].kind == model::PieceKind::bar);
    }
}

TEST_CASE("halves are asked for as whole bars, which every table says", "[model][schedule][bars]") {
    const auto job = job_of_lengths({90, 90, 90});
    const auto plans = model::bar_plans(job.project, job.catalogue, job.resolved,
                                        {.supply = [](const model::Stock&) {
                                            model::BarSupply supply;
                                            supply.offers = {{.length = (120_in).nm(),
                                                              .left = 9,
                                                              .price = 1'000,
                                                              .halved_from = (240_in).nm(),
                                                              .halved_price = 2'000}};
                                            return supply;
                                        }});
    const auto sold = model::bars_sold(job.project, plans);
    REQUIRE(sold.size() == 1);
    CHECK(sold[0].length == (240_in).nm());
    CHECK(sold[0].bars() == 2);
    CHECK(sold[0].leaves_half());
    CHECK(model::bars_to_buy(job.project, plans) == 2);
    const auto rows = model::bar_rows(job.project, job.catalogue, job.resolved, plans);
    REQUIRE(rows.size() == 3);
    const std::string half = "half of a bar of 20 ft";
    for (const auto& text : {model::bar_csv(job.project, job.resolved, rows),
                             model::nest_csv(job.project, job.catalogue, job.resolved, rows)}) {
        const auto table = engine::read_csv(text);
        REQUIRE(table);
        const auto column = [&](const std::string& name) {
            return std::ranges::find(table->header, name) - table->header.begin();
        };
        for (const auto& row : table->rows) {
            CHECK(row.at(static_cast<std::size_t>(column("from"))) == "buy, " + half);
            CHECK(row.at(static_cast<std::size_t>(column("bar_length"))) == "120 in");
        }
    }
}

TEST_CASE("bars are told by where they come from, halves by what they are half of",
          "[model][schedule][bars]") {
    const engine::TapeStyle inches;
    CHECK(model::with_half(model::from_words(model::BarFrom::offcut), {}, inches) == "an offcut");
    CHECK(model::with_half(model::from_words(model::BarFrom::shop), 240_in, inches) ==
          "to buy, half of a bar of 20 ft");
    CHECK(model::halves_counted(1, "20 ft") == "a half of 20 ft");
    CHECK(model::halves_counted(3, "20 ft") == "3 halves of 20 ft");
    const model::BarsSold three{.is_halved = true, .count = 3};
    CHECK(model::halving_note(three) == "each cut in half by the seller, one half is left over");
    CHECK(model::halving_note({.count = 3}).empty());
}

TEST_CASE("the list of bars counts the hands of a mark as the cut list does",
          "[model][schedule][bars]") {
    const auto job = tests::small_job();
    const auto bars = engine::read_csv(model::bar_csv(job.project, job.resolved, rows_of(job)));
    const auto cuts = engine::read_csv(model::cut_csv(
        job.project, job.resolved, model::cut_rows(job.project, job.catalogue, job.resolved)));
    REQUIRE(bars);
    REQUIRE(cuts);
    std::map<std::pair<std::string, std::string>, int> counted;  // by mark and hand
    for (const auto& row : bars->rows) ++counted[{row[5], row[6]}];
    std::size_t hands = 0;
    for (const auto& row : cuts->rows) {
        if (row[3] != "bar") continue;
        CAPTURE(row[0], row[1]);
        CHECK(std::to_string(counted[{row[0], row[1]}]) == row[2]);
        if (!row[1].empty()) ++hands;
    }
    CHECK(hands == 2);
}

#include "model/buying/comparison.h"

#include "model/buying/what_if.h"
#include "model/schedule/findings.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace engine::literals;
using namespace model;

namespace {

PriceList yard_list(Cents long_bar, Cents short_bar) {
    PriceList list;
    list.terms.currency = "USD";
    list.terms.longest_brought_home = 72_in;
    list.terms.cutting_in_half = 200;
    list.bars = {
        {.section = "angle 1 x 1 x 1/8", .alloy = "6063-T52", .length = 96_in, .price = long_bar},
        {.section = "angle 1 x 1 x 1/8", .alloy = "6063-T52", .length = 30_in, .price = short_bar},
        {.section = "flat 1 x 1/8", .alloy = "6063-T52", .length = 48_in, .price = 500}};
    for (const char* fastener : {"blind rivet 1/8, grip 4-4", "machine screw 8-32 x 1/2 in",
                                 "nut for machine screw 8-32", "sheet pin 1/8"})
        list.boxes.push_back({.fastener = fastener, .count = 10, .price = 100});
    return list;
}

struct Trade {
    tests::SmallJob job = tests::small_job();
    PriceLibrary library;

    Trade() {
        job.project.stock[0].offcuts.clear();
        job.project.shop.supplier = "brook";
        job.project.suppliers = {{.name = "brook", .prices = "brook.csv", .way = WayHome::fetched},
                                 {.name = "hill", .prices = "hill.csv", .way = WayHome::fetched},
                                 {.name = "closed", .prices = "closed.csv"}};
        library.lists.emplace("brook.csv", yard_list(2'000, 1'500));
        library.lists.emplace("hill.csv", yard_list(3'000, 700));
        library.lists.emplace("closed.csv", engine::Error{engine::ErrorCode::bad_file, "closed.csv",
                                                          "there is no such file"});
    }
    std::vector<Offering> offerings() const {
        return comparison(job.project, job.catalogue, job.resolved, library);
    }
};

}  // namespace

TEST_CASE("suppliers stand side by side, with why one cannot be asked",
          "[model][buying][comparison]") {
    const Trade trade;
    const auto offerings = trade.offerings();
    REQUIRE(offerings.size() == 4);
    CHECK(offerings[0].name == "as stated");
    CHECK(offerings[1].is_chosen);
    CHECK_FALSE(offerings[0].is_chosen);
    REQUIRE(offerings[1].estimate);
    CHECK_FALSE(offerings[3].estimate);
    CHECK(offerings[3].estimate.error().message == "there is no such file");
    // Posts of 12, 12 and a rail of 19 11/16 in, with a kerf of 3/32 in and 1/2 in trimmed from
    // each end, want 44 7/8 in: one half of the 96 in bar, or two bars of 30 in. At the brook the
    // bar cut in half is 22.00 and two short ones 30.00; on the hill 32.00 and 14.00.
    CHECK(offerings[1].estimate->lines[0].size == "8 ft");
    CHECK(offerings[2].estimate->lines[0].size == "30 in");
    CHECK(offerings[2].estimate->lines[0].sum == 1'400);
    CHECK(cheapest_of(offerings) == 2);
}

TEST_CASE("rows of the comparison have a cell for each supplier", "[model][buying][comparison]") {
    const Trade trade;
    const auto offerings = trade.offerings();
    const auto rows = comparison_rows(offerings, trade.job.project.shown);
    const auto row = [&](const std::string& what) {
        const auto at = std::ranges::find(rows, what, &ComparisonRow::what);
        if (at == rows.end()) FAIL("no row " + what);
        return at->cells;
    };
    for (const auto& it : rows) CHECK(it.cells.size() == 4);
    CHECK(row("cutting in half") == std::vector<std::string>{"", "2.00", "", ""});
    // 14.00 + 5.00 for bars, 4 boxes at 1.00.
    CHECK(row("total")[2] == "23.00");
    CHECK(row("total")[0] == "no price");
    CHECK(row("total")[3].empty());
    // Nobody delivers and nobody asks for tax.
    CHECK(std::ranges::find(rows, "delivery", &ComparisonRow::what) == rows.end());
    CHECK(std::ranges::find(rows, "tax", &ComparisonRow::what) == rows.end());
}

TEST_CASE("where all lack the same the cheapest of all is told, else none that lacks something",
          "[model][buying][comparison]") {
    Trade trade;
    auto brook = yard_list(2'000, 1'500);
    auto hill = yard_list(3'000, 700);
    const auto cheapest = [&] {
        trade.library.lists.erase("brook.csv");
        trade.library.lists.erase("hill.csv");
        trade.library.lists.emplace("brook.csv", brook);
        trade.library.lists.emplace("hill.csv", hill);
        return cheapest_of(trade.offerings());
    };
    trade.job.project.shop.currency = "USD";
    brook.boxes.pop_back();
    CHECK(cheapest() == 2);  // the hill alone lacks nothing
    hill.boxes.clear();
    CHECK_FALSE(cheapest());  // they lack different things
    // As stated no fastener has a price: nobody has one now. Bars are 22.00 + 5.00 at the brook and
    // 14.00 + 5.00 on the hill.
    for (auto& stock : trade.job.project.stock) {
        for (auto& bar : stock.bars) bar.price = 99.0;
    }
    brook.boxes.clear();
    CHECK(cheapest() == 2);
}

TEST_CASE("what lacks in one number here and another there is not the same, nor are bars",
          "[model][buying][comparison]") {
    const auto offering = [](std::vector<EstimateLine> lines, std::vector<std::string> without,
                             Cents total) {
        Estimate estimate;
        estimate.lines = std::move(lines);
        estimate.without = std::move(without);
        estimate.total = total;
        return Offering{.name = "one", .estimate = std::move(estimate)};
    };
    const EstimateLine ten{.kind = BuyKind::fastener, .what = "rivet", .count = 10};
    const EstimateLine two{.kind = BuyKind::fastener, .what = "rivet", .count = 2};
    const EstimateLine bar{.kind = BuyKind::bar, .what = "angle", .count = 2};
    CHECK(cheapest_of({offering({ten}, {"rivet"}, 900), offering({ten}, {"rivet"}, 800)}) == 1);
    CHECK_FALSE(cheapest_of({offering({ten}, {"rivet"}, 900), offering({two}, {"rivet"}, 800)}));
    CHECK_FALSE(cheapest_of({offering({bar}, {"angle"}, 900), offering({bar}, {"angle"}, 800)}));
    const EstimateLine van{.kind = BuyKind::delivery, .what = "delivery", .count = 1};
    CHECK_FALSE(cheapest_of({offering({van}, {"it"}, 900), offering({van}, {"it"}, 800)}));
    const std::string pieces = "2 pieces that no bar holds";
    CHECK_FALSE(cheapest_of({offering({}, {pieces}, 900), offering({}, {pieces}, 800)}));
    const std::string parts = "1 part of sheet birch that no sheet holds";
    CHECK_FALSE(cheapest_of(
        {offering({ten}, {parts, "rivet"}, 900), offering({ten}, {parts, "rivet"}, 800)}));
}

TEST_CASE("totals in different currencies are not compared", "[model][buying][comparison]") {
    Trade trade;
    auto list = yard_list(3'000, 700);
    list.terms.currency = "CAD";
    trade.library.lists.erase("hill.csv");
    trade.library.lists.emplace("hill.csv", list);
    CHECK_FALSE(cheapest_of(trade.offerings()));
}

TEST_CASE("the chosen supplier is the one that is bought from, if its list is read",
          "[model][buying][comparison]") {
    Trade trade;
    CHECK(chosen_supplier(trade.job.project, trade.library).supplier ==
          &trade.job.project.suppliers[0]);
    trade.job.project.shop.supplier = "closed";
    CHECK(chosen_supplier(trade.job.project, trade.library).supplier == nullptr);
}

TEST_CASE("each length is worth what its absence would cost", "[model][buying][what if]") {
    const Trade trade;
    const auto& project = trade.job.project;
    const BuyFrom hill{&project.suppliers[1], prices_of(trade.library, project.suppliers[1])};
    const PlanWish wish{.supply = supply_of(project, trade.job.resolved, hill)};
    const auto plans = bar_plans(project, trade.job.catalogue, trade.job.resolved, wish);
    const auto all = what_if_without(project, trade.job.catalogue, trade.job.resolved, plans, wish);
    REQUIRE(all.size() == 3);
    // The half of 96 in is not used: without it all stays as it is.
    CHECK(all[0].halved_from == (96_in).nm());
    CHECK(all[0].used == 0);
    CHECK(all[0].cost == 1'900);
    // Without the 30 in bars one half of a 96 in bar is needed, and the whole is paid for with its
    // cut, 30.00 + 2.00; nothing else is left there, and bars are sold whole.
    CHECK(all[1].length == (30_in).nm());
    CHECK(all[1].used == 2);
    // With 5.00 for the flat.
    CHECK(all[1].with == 1'900);
    CHECK(all[1].cost == 3'700);
    CHECK(all[1].is_proven);
    // The flat is sold in one length only.
    CHECK(all[2].used == 1);
    CHECK_FALSE(all[2].cost);
}

TEST_CASE("an error within the chosen list is told with its line, wherever bars are planned",
          "[model][buying][comparison]") {
    Trade trade;
    trade.library.lists.erase("closed.csv");
    trade.library.lists.emplace(
        "closed.csv", engine::Error{engine::ErrorCode::bad_file, "closed.csv, line 7, column price",
                                    "\"much\" is no price"});
    trade.job.project.shop.supplier = "closed";
    const auto supply = chosen_supply(trade.job.project, trade.job.resolved,
                                      trade.library)(trade.job.project.stock[0]);
    REQUIRE(supply.list_not_read);
    CHECK(supply.list_not_read->is_within);
    CHECK(supply.list_not_read->error.where == "closed.csv, line 7, column price");
    const auto findings =
        bar_findings(trade.job.project, trade.job.catalogue, trade.job.resolved,
                     chosen_supply(trade.job.project, trade.job.resolved, trade.library));
    const auto told = std::ranges::find(findings, "price_list_not_read", &Finding::code);
    REQUIRE(told != findings.end());
    CHECK(told->what.find("closed.csv, line 7, column price: \"much\" is no price") == 0);
    CHECK(told->mend.find("mend that place in the list") == 0);
    // A list that is away, whatever its file is called, has no place to be mended.
    trade.library.lists.insert_or_assign(
        "closed.csv", engine::Error{engine::ErrorCode::unknown_name, "line, line 7.csv",
                                    "cannot read: no such file"});
    const auto away =
        bar_findings(trade.job.project, trade.job.catalogue, trade.job.resolved,
                     chosen_supply(trade.job.project, trade.job.resolved, trade.library));
    const auto again = std::ranges::find(away, "price_list_not_read", &Finding::code);
    REQUIRE(again != away.end());
    CHECK(again->mend.find("put the list back") == 0);
}

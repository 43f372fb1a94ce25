#include "model/buying/supply_from.h"

#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace engine::literals;
using namespace model;

namespace {

constexpr int any = std::numeric_limits<int>::max();

struct Trade {
    Project project;
    Resolved resolved;
    PriceList prices;
    Supplier supplier{.name = "the yard by the canal", .prices = "prices.csv"};
    Stock stock{.name = "angle",
                .section = "angle 1 x 1 x 1/8",
                .alloy = "6063-T52",
                .bars = {{.length = "3 ft"}},
                .offcuts = {{.length = "30", .count = 2}},
                .at_home = {{.length = "16 ft"}}};

    Trade() {
        resolved.shop.kerf = (8_in_64).nm();
        offer("angle 1 x 1 x 1/8", "6063-T52", 192_in, 2700);
        offer("angle 1 x 1 x 1/8", "6063-T52", 240_in, 3351);
        offer("angle 1 x 1 x 1/8", "6061-T6", 240_in, 4000);
        offer("angle 1 x 1 x 1/4", "6063-T52", 240_in, 6000);
    }

    void offer(const char* section, const char* alloy, Length length, Cents price) {
        prices.bars.push_back(
            {.section = section, .alloy = alloy, .length = length, .price = price});
    }
    BarSupply supply() const { return supply_from(prices, supplier, project, resolved, stock); }
};

}  // namespace

TEST_CASE("a supplier offers bars of the stock's section and alloy, the longest first",
          "[model][buying][supply]") {
    const auto supply = Trade{}.supply();
    REQUIRE(supply.offers.size() == 2);
    CHECK(supply.offers[0].length == (240_in).nm());
    CHECK(supply.offers[0].price == 3351);
    CHECK(supply.offers[0].left == any);
    CHECK(supply.offers[0].halved_from == 0);
    CHECK(supply.offers[1].length == (192_in).nm());
    CHECK(supply.refused.empty());
}

TEST_CASE("what is at home and on the rack is there whoever sells", "[model][buying][supply]") {
    const auto supply = Trade{}.supply();
    CHECK(supply.offcuts == std::vector<Nm>(2, (30_in).nm()));
    CHECK(supply.at_home == std::vector<Nm>{(192_in).nm()});
}

TEST_CASE("what is fetched is no longer than what can be brought home", "[model][buying][supply]") {
    Trade trade;
    trade.supplier.way = WayHome::fetched;
    trade.prices.terms.longest_brought_home = 192_in;
    const auto supply = trade.supply();
    REQUIRE(supply.offers.size() == 1);
    CHECK(supply.offers[0].length == (192_in).nm());
    REQUIRE(supply.not_home.size() == 1);
    CHECK(supply.not_home[0].where == "the yard by the canal");
    CHECK(supply.not_home[0].message.find("240 in") != std::string::npos);
    trade.supplier.way = WayHome::delivered;
    CHECK(trade.supply().offers.size() == 2);
}

TEST_CASE("what is delivered has a limit only where the list states one",
          "[model][buying][supply]") {
    Trade trade;
    trade.prices.terms.longest_delivered = 200_in;
    CHECK(trade.supply().offers.size() == 1);
}

TEST_CASE("a bar that is too long comes in two halves where the supplier cuts",
          "[model][buying][supply]") {
    Trade trade;
    trade.supplier.way = WayHome::fetched;
    trade.prices.terms.longest_brought_home = 144_in;
    trade.prices.terms.cutting_in_half = 300;
    trade.prices.bars[1].limit = 5;
    const auto supply = trade.supply();
    REQUIRE(supply.offers.size() == 2);
    // (240 - 1/8) / 2 = 119 15/16 in; (33.51 + 3.00) / 2 = 18.255, up to 18.26.
    CHECK(supply.offers[0].length == (240_in - 8_in_64).nm() / 2);
    CHECK(supply.offers[0].price == 1826);
    CHECK(supply.offers[0].left == 10);
    CHECK(supply.offers[0].halved_from == (240_in).nm());
    // (192 - 1/8) / 2; (27.00 + 3.00) / 2.
    CHECK(supply.offers[1].price == 1500);
    CHECK(supply.offers[1].left == any);
}

TEST_CASE("a supplier that charges each cut cuts in half for that", "[model][buying][supply]") {
    Trade trade;
    trade.supplier.way = WayHome::fetched;
    trade.prices.terms.longest_brought_home = 144_in;
    trade.prices.terms.each_cut = 100;
    CHECK(trade.supply().offers[1].price == 1400);
}

TEST_CASE("a bar whose halves are still too long does not come home", "[model][buying][supply]") {
    Trade trade;
    trade.supplier.way = WayHome::fetched;
    trade.prices.terms.longest_brought_home = 96_in;
    trade.prices.terms.cutting_in_half = 0;
    const auto supply = trade.supply();
    REQUIRE(supply.offers.size() == 1);  // halves of 192 in are 95 15/16 in
    CHECK(supply.offers[0].halved_from == (192_in).nm());
    CHECK(supply.not_home.size() == 1);
}

TEST_CASE("halves of a bar without a price have none", "[model][buying][supply]") {
    Trade trade;
    trade.supplier.way = WayHome::fetched;
    trade.prices.terms.longest_brought_home = 144_in;
    trade.prices.terms.cutting_in_half = 300;
    // None has one: where another has, a bar without is not counted on.
    for (auto& bar : trade.prices.bars) bar.price.reset();
    const auto supply = trade.supply();
    REQUIRE(supply.offers.size() == 2);
    for (const auto& offer : supply.offers) {
        CHECK(offer.halved_from > 0);
        CHECK_FALSE(offer.price);
        CHECK_FALSE(offer.halved_price);
    }
}

TEST_CASE("a bar without a price is not counted on where another has one",
          "[model][buying][supply]") {
    Trade trade;
    trade.prices.bars.push_back(
        {.section = "angle 1 x 1 x 1/8", .alloy = "6063-T52", .length = 300_in});
    const auto supply = trade.supply();
    CHECK(supply.offers.size() == 2);
    REQUIRE(supply.not_home.size() == 1);
    CHECK(supply.not_home[0].message.find("has no price") != std::string::npos);
    // Where none has a price, lengths can still be compared.
    for (auto& bar : trade.prices.bars) bar.price.reset();
    CHECK(trade.supply().offers.size() == 3);
}

TEST_CASE("halves of a bar count exactly half of it, its cut included", "[model][buying][supply]") {
    Trade trade;
    trade.prices.bars = {
        {.section = "angle 1 x 1 x 1/8", .alloy = "6063-T52", .length = 240_in, .price = 2175}};
    trade.prices.terms.longest_brought_home = 144_in;
    trade.prices.terms.each_cut = 150;
    trade.supplier.way = WayHome::fetched;
    const auto supply = trade.supply();
    REQUIRE(supply.offers.size() == 1);
    CHECK(supply.offers[0].halved_price == 2325);
    CHECK(supply.offers[0].price == 1163);  // as it is shown
}

TEST_CASE("rows of a list that are not used are told with their lines and why",
          "[model][buying][supply]") {
    const std::string text =
        "what,size,price,limit\n"
        "longest brought home,16 ft\n"
        "angle 1 x 1 x 1/8 6063-T52,20 ft,33.51\n"
        "angle 1 x 1 x 1/8 6063-T52,16 ft,27\n"
        "angle 1 x 1 x 1/8 6063-T52,12 ft,\n"
        "angel 1 x 1 x 1/8 6063-T52,16 ft,27\n"
        "free cuts,,,2\n";
    Trade trade;
    const auto list =
        read_price_list(text, "yard.csv", shipped_catalogue(), engine::LengthUnit::inch);
    if (!list) FAIL(engine::to_text(list.error()));
    trade.supplier.way = WayHome::fetched;
    trade.project.stock = {trade.stock, trade.stock};
    const auto rows = rows_not_used(*list, trade.supplier, trade.project, trade.resolved);
    std::vector<std::string> places;
    for (const auto& row : rows) places.push_back(row.where);
    // Each once, though two stocks are of that section.
    CHECK(places == std::vector<std::string>{"yard.csv, line 6", "yard.csv, line 7",
                                             "yard.csv, line 3", "yard.csv, line 5"});
    CHECK(rows[0].message.find("the nearest is") != std::string::npos);
    CHECK(rows[1].message.find("free cuts are not used") == 0);
    CHECK(rows[2].message.find("longer than") != std::string::npos);
    CHECK(rows[3].message.find("no price") != std::string::npos);
}

TEST_CASE("free cuts with a fee behind them are no fault", "[model][buying][supply]") {
    const auto list = read_price_list("what,size,price,limit\neach cut,,1.50,\nfree cuts,,,2\n",
                                      "yard.csv", shipped_catalogue(), engine::LengthUnit::inch);
    REQUIRE(list);
    CHECK(list->warnings.empty());
}

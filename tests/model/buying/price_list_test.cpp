#include "model/buying/price_list.h"

#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/support/dice.h"
#include "tests/support/seeds.h"

#include <catch2/catch.hpp>

using namespace engine::literals;
using model::PriceList;

namespace {

engine::Result<PriceList> read(const std::string& text) {
    return model::read_price_list(text, "prices.csv", shipped_catalogue(),
                                  engine::LengthUnit::inch);
}

PriceList list_of(const std::string& text) {
    const auto list = read(text);
    if (!list) FAIL(engine::to_text(list.error()));
    return *list;
}

const std::string headings = "what,size,price,per,limit,note\n";

std::string fault_in(const std::string& row) {
    const auto list = read(headings + "\n" + row + "\n");
    CAPTURE(row);
    REQUIRE_FALSE(list);
    return list.error().where;
}

const std::string full_list =
    "# invented\r\n"
    "what,size,price,per,limit,note\r\n"
    "currency,,USD,,,\r\n"
    "delivery,,45,order,,\r\n"
    "tax,,8.25 %,,,\r\n"
    "longest brought home,12 ft,,,,\r\n"
    "longest delivered,25 ft,,,,\r\n"
    "cutting in half,,3.00,,,\r\n"
    "each cut,,2.00,,,\r\n"
    "angle 1 x 1 x 1/8 6063-T52,20 ft,33.50,bar,12,by the gate\r\n"
    "Angle 1x1x1/8 6063-t52,16 ft,,,,\r\n"
    "sheet 5052-H32,1/8 x 48 x 96 in,92.00,sheet,,\r\n"
    "sheet birch plywood with grain,6 mm x 1250 x 2500 mm,\"41,90\",each,2,\r\n"
    "\"blind rivet 1/8, grip 4-4\",,8.40,box of 100,,\r\n"
    "\"blind rivet 1/8, grip 4-4\",,30,bag of 500,3,\r\n"
    "sheet pin 1/8,,0.45,each,,\r\n";

}  // namespace

TEST_CASE("a price list holds terms, bars, sheets and boxes", "[model][buying][prices]") {
    const auto list = list_of(full_list);
    CHECK(list.warnings.empty());
    CHECK(list.terms.currency == "USD");
    CHECK(list.terms.delivery == 4500);
    CHECK(list.terms.tax_percent == 8.25);
    CHECK(list.terms.longest_brought_home == 144_in);
    CHECK(list.terms.longest_delivered == 300_in);
    CHECK(list.terms.cutting_in_half == 300);
    CHECK(list.terms.each_cut == 200);
    REQUIRE(list.bars.size() == 2);
    CHECK(list.bars[0] == model::BarPrice{.section = "angle 1 x 1 x 1/8",
                                          .alloy = "6063-T52",
                                          .length = 240_in,
                                          .price = 3350,
                                          .limit = 12,
                                          .note = "by the gate"});
    CHECK(list.bars[1].section == "angle 1 x 1 x 1/8");
    CHECK_FALSE(list.bars[1].price);
    REQUIRE(list.sheets.size() == 2);
    CHECK(list.sheets[0].material == "5052-H32");
    CHECK(list.sheets[0].thickness == 8_in_64);
    CHECK_FALSE(list.sheets[0].has_grain);
    CHECK(list.sheets[1].material == "birch plywood");
    CHECK(list.sheets[1].has_grain);
    CHECK(list.sheets[1].price == 4190);
    CHECK(list.sheets[1].size == std::array{1250_mm, 2500_mm});
    REQUIRE(list.boxes.size() == 3);
    CHECK(list.boxes[1].count == 500);
    CHECK(list.boxes[1].limit == 3);
    CHECK(list.boxes[2].count == 1);
}

TEST_CASE("the same list reads the same with semicolons and decimal commas",
          "[model][buying][prices]") {
    const auto with_points = list_of(headings + "angle 1 x 1 x 1/8 6063-T52,6100 mm,33.50,,,\n");
    const auto with_commas =
        list_of("what;size;price;per;limit;note\nangle 1 x 1 x 1/8 6063-T52;6,1 m;33,50;;;\n");
    CHECK(with_points == with_commas);
}

TEST_CASE("columns may stand in any order and the last three may be missing",
          "[model][buying][prices]") {
    const auto list = list_of("price,what,size\n33.50,angle 1 x 1 x 1/8 6063-T52,20 ft\n");
    CHECK(list.bars[0].price == 3350);
    CHECK(list.warnings.empty());
}

TEST_CASE("what the catalogue does not know is told with the nearest name and not used",
          "[model][buying][prices]") {
    const auto list = list_of(headings +
                              "angle 1 x 1 x 1/8 6063-T25,20 ft,1,,,\n"
                              "angle 1 x 1 x 1/8,20 ft,1,,,\n"
                              "sheet birch plywod,1/4 x 48 x 96 in,1,,,\n"
                              "a dozen eggs and some milk from the corner shop,,1,,,\n");
    CHECK(list.bars.empty());
    REQUIRE(list.warnings.size() == 4);
    CHECK(engine::to_text(list.warnings[0]) ==
          "prices.csv, line 2: the catalogue has no `angle 1 x 1 x 1/8 6063-T25`, so the row is "
          "not used; the nearest is `angle 1 x 1 x 1/8 6063-T5`");
    CHECK(list.warnings[1].message.find("nearest is `angle 1 x 1 x 1/8 6063-T52`") !=
          std::string::npos);
    CHECK(list.warnings[2].message.find("nearest is `sheet birch plywood`") != std::string::npos);
    CHECK(list.warnings[3].message.find("nearest") == std::string::npos);
}

TEST_CASE("a column that is not read is told", "[model][buying][prices]") {
    const auto list = list_of("what,size,price,supplier code\nsheet pin 1/8,,1,A7\n");
    REQUIRE(list.warnings.size() == 1);
    CHECK(list.warnings[0].where == "prices.csv, line 1");
    CHECK(list.warnings[0].message.find("supplier code") != std::string::npos);
}

TEST_CASE("what cannot be read in one way is refused with file, line and column",
          "[model][buying][prices]") {
    const std::string angle = "angle 1 x 1 x 1/8 6063-T52,";
    CHECK(fault_in(angle + "20 ft,1.234,,,") == "prices.csv, line 3, column price");
    CHECK(fault_in(angle + "20 ft,cheap,,,") == "prices.csv, line 3, column price");
    CHECK(fault_in(angle + "20 ft,0,,,") == "prices.csv, line 3, column price");
    CHECK(fault_in(angle + "20 foots,1,,,") == "prices.csv, line 3, column size");
    CHECK(fault_in(angle + ",1,,,") == "prices.csv, line 3, column size");
    CHECK(fault_in(angle + "20 ft,33,50,,") == "prices.csv, line 3, column per");
    CHECK(fault_in(angle + "20 ft,33,,some,") == "prices.csv, line 3, column limit");
    CHECK(fault_in(",20 ft,33,,,") == "prices.csv, line 3, column what");
    CHECK(fault_in("sheet 5052-H32,48 x 96 in,9,,,") == "prices.csv, line 3, column size");
    CHECK(fault_in("sheet pin 1/8,,9,50,,") == "prices.csv, line 3, column per");
    CHECK(fault_in("sheet pin 1/8,,9,box of 0,,") == "prices.csv, line 3, column per");
    CHECK(fault_in("sheet pin 1/8,3 in,9,,,") == "prices.csv, line 3, column size");
    CHECK(fault_in("tax,,high,,,") == "prices.csv, line 3, column price");
    CHECK(fault_in("tax,8,,,,") == "prices.csv, line 3, column size");
    CHECK(fault_in("longest delivered,,25 ft,,,") == "prices.csv, line 3, column price");
    CHECK(fault_in("longest brought home,,,,12 ft,") == "prices.csv, line 3, column limit");
    CHECK(fault_in("longest brought home,,,12 ft,,") == "prices.csv, line 3, column per");
    CHECK(fault_in("free cuts,,,2,,") == "prices.csv, line 3, column per");
    CHECK(fault_in("delivery,,,,35,") == "prices.csv, line 3, column limit");
}

TEST_CASE("what stands twice is refused with the line of the first", "[model][buying][prices]") {
    const auto list = read(headings +
                           "angle 1 x 1 x 1/8 6063-T52,20 ft,33.50,,,\n"
                           "angle 1 x 1 x 1/8 6063-T52,240 in,34.50,,,\n");
    REQUIRE_FALSE(list);
    CHECK(list.error().where == "prices.csv, line 3, column size");
    CHECK(list.error().message.find("line 2") != std::string::npos);
    CHECK_FALSE(read(headings + "tax,,8,,,\ntax,,9,,,\n"));
}

TEST_CASE("prices of two currencies in one list are refused", "[model][buying][prices]") {
    CHECK_FALSE(read(headings + "currency,,CAD,,,\nsheet pin 1/8,,1 USD,,,\n"));
    CHECK(read(headings + "currency,,CAD,,,\nsheet pin 1/8,,$1,,,\n"));
}

TEST_CASE("a price list that is written reads back the same", "[model][buying][prices]") {
    const auto list = list_of(full_list);
    for (const auto form : {engine::TapeForm::inch_fraction, engine::TapeForm::feet_inches,
                            engine::TapeForm::inch_decimal, engine::TapeForm::millimetre}) {
        CHECK(list_of(model::price_list_text(list, {.form = form})) == list);
    }
}

TEST_CASE("a damaged price list is read or refused with a line, and never brings the reader down",
          "[model][buying][prices]") {
    const std::vector<std::string> scraps{",",
                                          ";",
                                          "\"",
                                          "\n",
                                          "\r",
                                          "#",
                                          "x",
                                          "\t",
                                          "0",
                                          "9",
                                          ".",
                                          "-",
                                          "ft",
                                          "\xE2\x82\xAC",
                                          "\xFF",
                                          std::string(1, '\0'),
                                          "999999999999999999",
                                          " ",
                                          "'",
                                          "box of ",
                                          "=",
                                          "1/0"};
    const std::string metric =
        "what;size;price\ntax;;19 %\nangle 30 x 30 x 3 mm 6060-T66;6 m;25,90";
    int refused = 0;
    const auto cases = tests::seed_count(600);
    for (std::uint32_t seed = 0; seed < cases; ++seed) {
        tests::Dice dice{seed};
        std::string text = dice.chance(70) ? full_list : metric;
        const auto changes = 1 + dice.below(6);
        for (std::uint32_t i = 0; i < changes && !text.empty(); ++i) {
            const auto at = dice.below(static_cast<std::uint32_t>(text.size()));
            const auto length = dice.below(4);
            text.replace(at, length, dice.one_of(scraps));
        }
        const auto list = read(text);
        if (list) continue;
        ++refused;
        CAPTURE(seed, text);
        CHECK(list.error().where.rfind("prices.csv, line ", 0) == 0);
        CHECK_FALSE(list.error().message.empty());
    }
    CHECK(refused > 0);
}

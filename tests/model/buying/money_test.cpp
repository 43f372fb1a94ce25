#include "model/buying/money.h"

#include "tests/support/dice.h"

#include <catch2/catch.hpp>

using model::read_money;
using model::ReadMoney;

namespace {

model::Cents cents(const std::string& text) {
    const auto money = read_money(text);
    CAPTURE(text);
    REQUIRE(money);
    return money->cents;
}

}  // namespace

TEST_CASE("prices are read in the manner of many countries", "[model][buying][money]") {
    CHECK(cents("33.50") == 3350);
    CHECK(cents("33,50") == 3350);
    CHECK(cents("33.5") == 3350);
    CHECK(cents("33") == 3300);
    CHECK(cents("0.05") == 5);
    CHECK(cents("1,234.50") == 123450);
    CHECK(cents("1.234,50") == 123450);
    CHECK(cents("1 234,50") == 123450);
    CHECK(cents("1\xC2\xA0"
                "234,50") == 123450);
    CHECK(cents("1'234.50") == 123450);
    CHECK(cents("1\xE2\x80\x99"
                "234.50") == 123450);
    CHECK(cents("1.234.567") == 123456700);
    CHECK(cents("12.3400") == 1234);
}

TEST_CASE("a currency may stand before or behind its price", "[model][buying][money]") {
    CHECK(*read_money("$33.50") == ReadMoney{3350, "$"});
    CHECK(*read_money("\xE2\x82\xAC 33,50") == ReadMoney{3350, "\xE2\x82\xAC"});
    CHECK(*read_money("33,50\xC2\xA0\xE2\x82\xAC") == ReadMoney{3350, "\xE2\x82\xAC"});
    CHECK(*read_money("33.50 EUR") == ReadMoney{3350, "EUR"});
    CHECK(*read_money("Fr. 33.50") == ReadMoney{3350, "Fr"});
    CHECK(*read_money("120 kr.") == ReadMoney{12000, "kr"});
}

TEST_CASE("a price that could be meant in two ways is refused with both of them",
          "[model][buying][money]") {
    for (const std::string text : {"1.234", "1,234", "33.500"}) {
        const auto money = read_money(text);
        CAPTURE(text);
        REQUIRE_FALSE(money);
        CHECK(money.error().message.find("two ways") != std::string::npos);
    }
    CHECK(read_money("1.234").error().message ==
          "`1.234` can be read in two ways; write 1234 or 1.23");
}

TEST_CASE("what is no price is refused", "[model][buying][money]") {
    for (const std::string text :
         {"", "free", "-3", "(3.50)", "3 k", "3k", "3.50 each", "1.2.3", "12,34,56", "1,2345.6",
          "12.", "3/4", "$3.50 EUR", "3.50-4.50", "0.125", "1e3", "12 50", "999999999999", "= 3"}) {
        CAPTURE(text);
        CHECK_FALSE(read_money(text));
    }
}

TEST_CASE("a percentage has up to four decimals", "[model][buying][money]") {
    CHECK(*model::read_percent("8.25") == 8.25);
    CHECK(*model::read_percent("8,25 %") == 8.25);
    CHECK(*model::read_percent("8.125%") == 8.125);
    CHECK(*model::read_percent("0") == 0.0);
    for (const std::string text : {"", "x", "-5", "1000", "8.12345", "8 or 9"}) {
        CAPTURE(text);
        CHECK_FALSE(model::read_percent(text));
    }
}

TEST_CASE("what is written as money is read as the same money", "[model][buying][money]") {
    tests::Dice dice{7};
    for (int i = 0; i < 2'000; ++i) {
        const auto amount = dice.between(0, model::most_cents);
        CHECK(cents(model::money_text(amount)) == amount);
    }
    CHECK(model::money_text(5) == "0.05");
    CHECK(model::money_text(-1250) == "-12.50");
}

TEST_CASE("a share is rounded once, halves away from nothing", "[model][buying][money]") {
    // 8.25 % of 123.40 is 10.1805.
    CHECK(model::share_of(12'340, 8.25) == 1'018);
    // 5 % of 0.10 is half a cent.
    CHECK(model::share_of(10, 5.0) == 1);
    CHECK(model::share_of(-10, 5.0) == -1);
    CHECK(model::share_of(9, 5.0) == 0);
    CHECK(model::share_of(1'000'000'000'000'000, 19.0) == 190'000'000'000'000);
}

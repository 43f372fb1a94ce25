#include "model/buying/shopping_page.h"

#include "tests/model/book/texts_on_page.h"

#include <catch2/catch.hpp>

using namespace model;

namespace {

bool has(const std::string& words, const std::string& part) {
    return words.find(part) != std::string::npos;
}

Estimate estimate() {
    return {.from = "yard",
            .currency = "USD",
            .lines = {{BuyKind::bar, "angle 1 x 1 x 1/8 6063-T52", "20 ft", 3, 2'175, 6'525, ""},
                      {BuyKind::cutting, "cutting in half", "", 1, 150, 150, "2 more for nothing"},
                      {BuyKind::fastener, "sheet pin 1/8", "", 4, std::nullopt, std::nullopt, ""},
                      {BuyKind::delivery, "delivery", "", 1, 3'500, 3'500, ""}},
            .sum = 10'175,
            .tax_percent = 10.0,
            .tax = 1'018,
            .total = 11'193,
            .without = {"sheet pin 1/8"}};
}

std::string words_of(const Estimate& estimate) {
    engine::Document document;
    add_shopping_pages(document, "What to buy: Counter", estimate, engine::Paper::letter);
    REQUIRE(document.pages.size() == 1);
    CHECK(tests::clash_on(document.pages[0]).empty());
    CHECK(document.bookmarks.at(0).title == "What to buy");
    return tests::words_on(document.pages[0]);
}

}  // namespace

TEST_CASE("the page of what to buy holds each thing with its price, and what has none",
          "[model][buying][shopping]") {
    const auto words = words_of(estimate());
    CAPTURE(words);
    CHECK(has(words, "From yard."));
    CHECK(has(words, "20 ft"));
    CHECK(has(words, "21.75"));
    CHECK(has(words, "65.25"));
    CHECK(has(words, "2 more for nothing"));
    CHECK(has(words, "no price"));
    CHECK(has(words, "35.00"));
    CHECK(has(words, "10.18 USD"));
    CHECK(has(words, "Total"));
    CHECK(has(words, "111.93 USD"));
    CHECK(has(words, "sheet pin 1/8."));  // what the total lacks
    CHECK_FALSE(has(words, "Paid"));
}

TEST_CASE("what was paid stands below what is still to buy", "[model][buying][shopping]") {
    auto partly = estimate();
    partly.paid = {{.date = "2026-11-27",
                    .supplier = "yard",
                    .currency = "USD",
                    .lines = {{BuyKind::bar, "angle", "20 ft", 3, 6'525}}}};
    const auto words = words_of(partly);
    CHECK(has(words, "Still to buy"));
    CHECK(has(words, "65.25 USD to yard on 2026-11-27"));
    partly.lines.clear();
    CHECK(has(words_of(partly), "There is nothing more to buy."));
}

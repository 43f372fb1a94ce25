// Lengths of bar as the dealer says them, and the bars that a project takes.
#pragma once

#include "editor/derived.h"
#include "engine/measure/tape.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace editor {

// "41 ft 2 in", "20 ft" or "12.5 m": to the nearest inch or centimetre.
std::string bar_text(engine::Length length, const engine::TapeStyle& shown);

// The rows of one bar: [first, first + count) in Derived::bars.
struct BarRun {
    std::size_t first = 0;
    std::size_t count = 0;
};

std::vector<BarRun> bar_runs(const Derived& derived);

// "3 x 16 ft + 1 x 12 ft", longest first, and the offcuts that are used; "no bar" where there is
// none. Of one stock, or of all. Bars that the seller cuts in half are told whole, as they are
// asked for: "2 x 20 ft in halves"; of a stock that shares one of them with another, as halves:
// "3 halves of 20 ft".
std::string bars_text(const Derived& derived, std::optional<model::Index> of_stock = {});

// Of all bars to buy; offcuts cost nothing. None where no bar is to be bought, or one of them has
// no price.
std::optional<double> price_of_bars(const Derived& derived);

// The first of the bars to buy that has none, where others have one; else empty.
std::string section_without_price(const Derived& derived);

// What a plan costs and what is known of cheaper ones: "137.50 crowns, proven cheapest"; empty
// where nothing is to be bought.
std::string plan_words(const model::BarPlan& plan, bool is_nested, const std::string& currency);

// Of the prices by which the bars are planned: the chosen supplier's list may name its own.
const std::string& bars_currency(const Derived& derived);

// "$164.20", "164.20 crowns".
std::string price_text(double price, const std::string& currency);

}  // namespace editor

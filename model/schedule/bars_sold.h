// The bars to buy as they are asked for at the counter: whole ones, also where the seller cuts them
// in half.
#pragma once

#include "model/schedule/bar_plan.h"

#include <optional>
#include <vector>

namespace model {

// Bars of one section, alloy, length and price, over all stocks: the two halves of a bar may serve
// two of them.
struct BarsSold {
    Index stock = 0;  // the first of those, in the project
    Nm length = 0;    // as it is sold
    bool is_halved = false;
    std::optional<Cents> price;  // as PlannedBar::price: of a half where it is halved
    int count = 0;               // of halves where it is halved

    int bars() const { return is_halved ? (count + 1) / 2 : count; }
    bool leaves_half() const { return is_halved && count % 2 != 0; }

    bool operator==(const BarsSold&) const = default;
};

// Of one section, alloy, length and price, and both halved or both whole.
bool is_same_goods(const Project& project, const BarsSold& a, const BarsSold& b);

// In the order in which the plans come to them.
std::vector<BarsSold> bars_sold(const Project& project, const std::vector<BarPlan>& plans);

int bars_to_buy(const Project& project, const std::vector<BarPlan>& plans);

}  // namespace model

// Which piece is cut from which bar.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/bar_supply.h"

#include <functional>
#include <optional>
#include <vector>

namespace model {

struct PlannedCut {
    Index piece = 0;
    Nm start = 0;  // from the bar's end as it was bought
};

// Where a bar comes from: to be bought, bought already, an offcut on the rack, or one that
// lies at the saw, where cuts are planned from it or made.
enum class BarFrom { shop, home, offcut, saw };

struct PlannedBar {
    Nm length = 0;
    BarFrom from = BarFrom::shop;
    std::optional<Cents> price;    // of one that is to be bought; none where it is not stated
    Nm halved_from = 0;            // of one that the supplier cuts in half: its whole length
    Index at_saw = no_index;       // in Stock::at_saw
    std::vector<PlannedCut> cuts;  // still to be made, in that order
    Nm next_start = 0;             // where the next piece would begin: after the last kerf

    bool is_offcut() const { return from == BarFrom::offcut; }
    Nm offcut() const { return next_start < length ? length - next_start : 0; }
};

struct BarPlan {
    Index stock = 0;
    std::vector<PlannedBar> bars;
    std::vector<Index> too_long;  // pieces that no bar of any number would hold
    std::vector<Index> left_out;  // pieces for which the bars ran out
    std::vector<Index> cut;       // pieces that need no cutting any more
    Nm longest_piece_room = 0;    // the longest piece that some bar or offcut could hold
    // What the bars to be bought cost and the least that any plan can cost, both by the prices of
    // the supply; where one is not stated it counts as much as others do for their length.
    Cents cost = 0;
    Cents least_cost = 0;
    bool is_cheapest = false;  // proven
    BarSupply supply;          // as it was before the first cut
};

enum class PlanEffort {
    // Longest piece first, onto the first bar that has room (first-fit decreasing; common practice
    // at the saw, within a fifth or so of the best plan): at once, for figures that follow a drag.
    first_fit,
    // The cheapest there is, as far as the allowed work can prove it: engine/cutting/nest.h.
    nested,
};

struct PlanWish {
    PlanEffort effort = PlanEffort::nested;
    // What a stock's bars are; empty: bar_supply, what the project itself states.
    std::function<BarSupply(const Stock&)> supply;
    // Asked now and then; where it answers false, what was found is given. May be empty.
    std::function<bool()> go_on;
};

// One plan per stock that pieces are cut from, in the project's order. Both ends of every bar and
// offcut lose the end trim: neither is trusted to be square; of a bar at the saw only the far
// one. What is at hand is used before a new bar is bought. A sloping end takes the room of its long
// point. Parts of sheet are not cut from bars. Where not all pieces find room, the plan is that of
// first fit. All bars at the saw come first, as in Stock::at_saw, also those that are cut up.
std::vector<BarPlan> bar_plans(const Project& project,
                               const Catalogue& catalogue,
                               const Resolved& resolved,
                               const PlanWish& wish = {});

}  // namespace model

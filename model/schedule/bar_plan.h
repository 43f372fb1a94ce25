// Which piece is cut from which bar: longest piece first, onto the first bar that has room
// (first-fit decreasing; common practice at the saw, within a fifth or so of the best plan).
#pragma once

#include "model/resolve/bar_supply.h"

#include <vector>

namespace model {

struct PlannedCut {
    Index piece = 0;
    Nm start = 0;  // from the bar's end as it was bought
};

struct PlannedBar {
    Nm length = 0;
    bool is_offcut = false;
    std::vector<PlannedCut> cuts;  // in the order they are made
    Nm next_start = 0;             // where the next piece would begin: after the last kerf

    Nm offcut() const { return next_start < length ? length - next_start : 0; }
};

struct BarPlan {
    Index stock = 0;
    std::vector<PlannedBar> bars;
    std::vector<Index> too_long;  // pieces that no bar of any number would hold
    std::vector<Index> left_out;  // pieces for which the bars ran out
    Nm longest_piece_room = 0;    // the longest piece that some bar or offcut could hold
    BarSupply supply;             // as it was before the first cut
};

// One plan per stock that pieces are cut from, in the project's order. Both ends of every bar and
// offcut lose the end trim: neither is trusted to be square. Offcuts are used before a new bar is
// bought; a new bar is the longest on offer, and is changed for the shortest that holds its cuts
// when all are made. A sloping end takes the room of its long point. Parts of sheet are not cut
// from bars.
std::vector<BarPlan> bar_plans(const Project& project, const Resolved& resolved);

}  // namespace model

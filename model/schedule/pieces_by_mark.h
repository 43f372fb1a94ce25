// The pieces of each mark and hand, which is what the cut and drill schedules have a line for.
#pragma once

#include "model/resolve/resolved.h"

#include <string>
#include <string_view>
#include <vector>

namespace model {

struct MarkGroup {
    Index mark = 0;
    Hand hand = Hand::none;
    std::vector<Index> pieces;  // in project order, never empty
};

// In order of mark; as drawn before opposite. Pieces without a mark are in none.
std::vector<MarkGroup> pieces_by_mark(const Resolved& resolved);

// "", "as drawn", "opposite". Empty where all pieces of the mark are alike.
std::string_view name_of(Hand hand);

// "A1", "A1 opp." for the opposite hand; empty for a piece without a mark.
std::string mark_on_drawing(const Resolved& resolved, const Piece& piece);

}  // namespace model

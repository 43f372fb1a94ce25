// What flush joints have in common: the place for a flat part that laps both members of a corner.
#pragma once

#include "model/resolve/recipe_row.h"

namespace model {

// Why two members cannot lie flush in the face that they share.
Unsuited not_flush(const FrameSkeleton& skeleton, const Meeting& meeting);

// Beside a corner, on the face of the two walls that the part lies on.
struct FlushCorner {
    bool is_flush = false;  // otherwise something else set one of them in deeper
    Plate upper;
    Plate lower;
    bool is_outside = false;  // tubes take it on the outer face, where the rivets are set from
    int away = 1;             // sense along the normal from the walls into the part
    Nm face = 0;              // where the part touches them
    int toe = 1;              // sense along the upper run from the lower piece's heel to its toe
};

FlushCorner flush_corner(const PartMaker& maker, const Corner& corner);

// A slab of that thickness on the face, over the given rectangle.
Box slab_on(const FlushCorner& flush, const Corner& corner, Box rect, Nm thickness);

// Where a part over that rectangle laps the two members. Without the corner square: not where both
// of them would lie if none were cut.
struct TwoLaps {
    Box on_upper;
    Box on_lower;
};

TwoLaps laps_within(const FlushCorner& flush,
                    const Corner& corner,
                    const Box& rect,
                    bool with_corner_square);

// Puts the part in and fastens it to both members; laps as by laps_within. False, and nothing done,
// where one of them has no room for a single fastener.
bool put_in(PartMaker& maker,
            const Corner& corner,
            const FlushCorner& flush,
            Piece part,
            const TwoLaps& laps);

// A gusset in the corner; as in RecipeRow::add_parts.
Unsuited add_gusset(PartMaker& maker, const Corner& corner, bool with_corner_square);

}  // namespace model

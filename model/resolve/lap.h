// Where plates touch face to face: the places for fasteners. Rules 5 and 6 of the staggered lap.
#pragma once

#include "model/resolve/skeleton.h"

#include <vector>

namespace model {

// A common rectangle of two walls of pieces with different runs.
struct Lap {
    Index upper = 0;  // piece of the frame, ranking above
    Index lower = 0;
    std::uint8_t upper_wall = 0;
    std::uint8_t lower_wall = 0;
    std::uint8_t normal_axis = 0;
    int towards_lower = 1;    // sense along the normal from the upper wall to the lower one
    Box rect;                 // flat: lo == hi along the normal, on the upper wall's face
    Nm gap = 0;               // between the two walls: the thickness of a shim
    std::uint8_t recipe = 0;  // of the joint, in recipes()
    // A brace that touches the outer face of the upper wall (or of the lower one) over part of the
    // lap: what holds the two may go through it too.
    Index cover = no_index;
    bool covers_upper = true;
    // One of the two is a brace or a leaning member; then rect holds the common polygon.
    bool is_of_brace = false;
};

// Laps of all pieces that lie close, in the order of the skeleton's close pairs.
std::vector<Lap> laps_of(const FrameSkeleton& skeleton);

// Those of one piece of a bar with one of another bar that runs otherwise, whatever their recipe
// is.
std::vector<Lap> laps_between(const FrameSkeleton& skeleton,
                              Index upper_piece,
                              Index lower_piece,
                              std::uint8_t recipe);

// A finding for each end of a member's piece that no lap holds, put in as number `at`.
void report_loose_ends(const FrameSkeleton& skeleton,
                       const Frame& frame,
                       const std::vector<Lap>& laps,
                       std::size_t at,
                       std::vector<Finding>& findings);

}  // namespace model

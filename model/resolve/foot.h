// Feet: a short angle at a member's end, one leg fastened to the member, the other one flat in the
// plane in which the member ends, with a hole by which it is fixed to floor or wall.
#pragma once

#include "model/resolve/part_maker.h"

#include <span>
#include <vector>

namespace model {

// The hole in a foot that nothing of the frame goes through.
struct FixingHole {
    std::uint8_t wall = 0;
    Nm from_datum = 0;
    Nm gauge = 0;
    Nm diameter = 0;
    Index drill = no_index;
};

// Puts the feet in that the members of a frame ask for, and adds to `holes` one for each, in the
// order of the feet. Done when the parts of joints are there; nothing is touched where no foot is
// asked for. Of `resolved` the dimensions and the frame are used. What cannot be made is a warning;
// a note tells what to heed when feet are fixed.
void add_feet(const PartRoom& room,
              const Resolved& resolved,
              FrameSkeleton& skeleton,
              const Frame& frame,
              std::vector<Outline>& outlines,
              std::vector<Lap>& laps,
              std::vector<FixingHole>& holes,
              std::vector<Finding>& findings);

// The fixing holes of all feet, in their order; all other holes are there.
void drill_feet(std::span<const FixingHole> holes, Resolved& out);

}  // namespace model

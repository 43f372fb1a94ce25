// The box that a frame must leave free for an obstacle: the obstacle's least box and its clearance,
// in the frame's axes, and the planes that bound it.
#pragma once

#include "model/project/edit.h"
#include "model/project/step_over_layout.h"

#include <array>
#include <string>

namespace model {

// A side of the notch that lies beyond the frame is moved this far out, so that nothing of the
// frame lies on it.
inline constexpr Nm far_out = 1'000'000'000'000'000;

// Of the members that join a notch's inner corners to the frame: a tie laps what it meets from
// within, so it lies below all at corners.
inline constexpr int rank_of_ties = 90;

struct Notch {
    std::string name;  // of the obstacle
    Box box;
    // By axis, least side first: the name of the plane there; empty where the notch is open.
    std::array<std::array<std::string, 2>, 3> plane;

    bool is_closed(std::size_t axis, std::size_t side) const { return !plane[axis][side].empty(); }
    Nm at(std::size_t axis, std::size_t side) const {
        return side == 0 ? box.lo[axis] : box.hi[axis];
    }
};

// Adds the notch's planes to the frame. Each stands on dimensions: where a face of the obstacle,
// the clearance or the frame's place is a plain value, it becomes a dimension first. Error: an
// obstacle of a kind that has no such faces, one that does not reach into the frame, a plane too
// near to another.
engine::Result<Notch> add_notch(Project& project,
                                Frame& frame,
                                const FrameLayout& layout,
                                const StepOver& edit);

}  // namespace model

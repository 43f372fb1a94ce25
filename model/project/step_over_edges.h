// The members along a notch in a frame: heel seats on its outside edges and where walls end on it,
// root seats in re-entrant edges, and ties that join their corners to the rest of the frame.
#pragma once

#include "model/project/step_over_layout.h"
#include "model/project/step_over_notch.h"

#include <optional>
#include <string>
#include <vector>

namespace model {

// The members that stand on one plane.
struct Wall {
    std::size_t axis = 0;
    Nm at = 0;
    std::string plane;
    Box extents;                       // without width
    std::vector<std::size_t> members;  // as in Frame::members

    // Whether it has area, and not members on one line only.
    bool is_wall() const;
};

// The frame before anything is taken out of it, and what will be left.
struct Stepping {
    const Project& project;
    const Frame& frame;
    const FrameLayout& layout;
    const Notch& notch;
    const FrameCells& left;
    std::vector<Wall> walls;
};

std::vector<Wall> walls_of(const Frame& frame, const FrameLayout& layout);

const Wall* wall_at(const Stepping& it, std::size_t axis, Nm at);

// Where a leg on this wall goes from its plane, for members along `run`: as those at its rim go.
Sense side_of(const Stepping& it, const Wall& wall, Axis run);

// The plane at a position of an axis by which members are stated.
std::string plane_at(const Stepping& it, std::size_t axis, Nm at);

// The members along the notch, without names or stock. Roots first.
std::vector<Member> edges_of_notch(const Stepping& it);

// Members from the inner corners of the notch to what stands next on the same wall. `members` are
// those that will be left, with the notch's edges.
std::vector<Member> ties_of_notch(const Stepping& it, const std::vector<Member>& members);

}  // namespace model

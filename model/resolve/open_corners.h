// Corners of a frame that hang in the air: rails that lap each other hold each other's ends, so no
// end is loose there, and yet nothing carries them.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <array>
#include <string>
#include <vector>

namespace model {

// A stretch of an upright edge of the frame's bays along which nothing stands, while rails end
// there that are held by each other only. It is stated as the post would be that is missing.
struct OpenCorner {
    std::array<std::string, 2> on;  // planes across x and y
    std::string from;               // planes across z
    std::string to;
    Seat seat = Seat::heel;
    std::array<Sense, 2> legs{};
    Nm length = 0;
    std::vector<Index> rails;  // in Frame::members, in their order
};

// None in a frame without bays, or with one that has no place. What else carries a corner: a post
// within the reach of an end (one and a half times the width of the rails' section), a leaning
// member that goes past it, a fixed panel in a side that ends there; and at one level a brace that
// ends there, a foot at a rail's end or a rail that runs on.
std::vector<OpenCorner> open_corners(const Project& project,
                                     const Catalogue& catalogue,
                                     const Frame& frame,
                                     const ResolvedFrame& placed);

Finding corner_not_carried(const Frame& frame, const OpenCorner& corner);

void report_open_corners(const Project& project, const Catalogue& catalogue, Resolved& resolved);

}  // namespace model

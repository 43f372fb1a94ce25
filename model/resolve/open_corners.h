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
    std::string from;               // planes across z, at its ends or next beyond them
    std::string to;
    std::array<bool, 2> is_short{};  // of those planes, at either end
    Seat seat = Seat::heel;
    std::array<Sense, 2> legs{};
    Nm length = 0;
    std::vector<Index> rails;  // in Frame::members, in their order
    bool is_braced = false;    // each of those is held by a brace, and by nothing else
};

// None in a frame without bays, or with one whose planes have no place. Rails that end within the
// reach of a corner (one and a half times the width of their section) end there. What else carries
// it: a post within that reach, a leaning member while it is as near, a fixed panel in a side that
// ends there; and at one level a foot at a rail's end, a rail that runs on, or a brace from another
// level.
std::vector<OpenCorner> open_corners(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     Index frame);

// "corner_not_carried", or of one that is braced the note "corner_on_brace".
Finding finding_of(const Frame& frame, const OpenCorner& corner);

void report_open_corners(const Project& project, const Catalogue& catalogue, Resolved& resolved);

}  // namespace model

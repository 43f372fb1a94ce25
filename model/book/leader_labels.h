// Names round a picture with lines that lead to what they name, none of which cross.
#pragma once

#include "engine/drawing/page.h"

#include <string>
#include <vector>

namespace model {

struct LeaderLabel {
    std::vector<engine::PagePoint> to;  // what is named: at one of these; one at least
    std::string text;
};

struct LeaderSides {
    bool left = true;
    bool right = true;
    bool top = true;
};

// Draws as many of them as have room round the box of the picture, the first ones first, and says
// how many those are. Texts stand outside of the box: on the left and right in columns, above it
// in a row.
std::size_t draw_leader_labels(engine::Page& page,
                               const std::vector<LeaderLabel>& labels,
                               const engine::PageBox& picture,
                               const LeaderSides& sides = {});

// How much room they need outside of the box: beside it, and above it, mm.
double leader_room_beside(const std::vector<LeaderLabel>& labels);
inline constexpr double leader_room_above = 11.0;

}  // namespace model

// A bar's section parted by the borders of its notches.
#pragma once

#include "engine/geometry/bar_solid.h"

namespace engine {

// Where a side, or what a border leaves of it, begins.
struct SectionNode {
    FacePoint at{};
    bool is_arc = false;
    bool starts_side = true;  // else a border parted the side here
    bool is_on_border = false;
    FacePoint centre{};      // of an arc
    double turn = 0.0;       // of an arc: its angle, above 0 to the left
    std::uint32_t part = 0;  // that the side from here belongs to: 0 the bar, i + 1 notch i
    std::uint32_t next = 0;
    std::uint32_t previous = 0;
};

// Straight through the section, from one node to another, with the bar on its left and the notch on
// its right.
struct PartBorder {
    std::uint32_t from = 0;
    std::uint32_t to = 0;
    std::uint32_t part = 0;
};

struct PartedSection {
    std::vector<SectionNode> nodes;
    std::vector<PartBorder> borders;

    // The other end of the border at a node, for one who walks round `part` and finds `met` ahead.
    std::uint32_t across_border(std::uint32_t node, std::uint32_t part, std::uint32_t met) const;
};

// False where a border does not pass between two straight sides.
bool part_section(PartedSection& parted,
                  const BarSection& section,
                  std::span<const BarNotch> notches);

}  // namespace engine

// Exact solids of straight bars: a section pushed along a line, its ends cut square, sloping or
// with a notch, and round holes across it.
#pragma once

#include "engine/geometry/extrusion.h"
#include "engine/geometry/face_triangles.h"
#include "engine/geometry/solid.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace engine {

// One side of a section, from its own point to that of the next side: straight, or an arc of less
// than half a turn.
struct SectionSide {
    FacePoint from{};
    bool is_arc = false;
    FacePoint centre{};

    bool operator==(const SectionSide&) const = default;
};

// Closed loops in the section's axes x, y, mm: the outline counter-clockwise, then hollows
// clockwise, none crossing or touching another.
struct BarSection {
    std::vector<SectionSide> sides;
    std::vector<std::uint32_t> loop_ends;  // where each loop ends in sides

    bool operator==(const BarSection&) const = default;
};

// A flat cut. It recedes from the bar's end by recedes + x * slope[0] + y * slope[1].
struct BarCut {
    double recedes = 0.0;
    std::array<double, 2> slope{};

    bool operator==(const BarCut&) const = default;
};

// What of the section lies in a rectangle ends further back. The rectangle reaches across a whole
// wall: where its border passes through the section, it passes between two straight sides.
struct BarNotch {
    FacePoint lo{};
    FacePoint hi{};
    std::array<double, 2> back{};  // from the cut at the start and at the end, mm

    bool operator==(const BarNotch&) const = default;
};

struct BarShape {
    double length = 0.0;           // mm
    std::array<BarCut, 2> cuts{};  // at the start (z = 0) and at the end (z = length)
    std::span<const BarNotch> notches;
    std::span<const CrossHole> holes;
};

struct BarSolidWork;

// Makes bars from z = 0 to the length in their own axes. A hole that does not lie wholly within its
// wall or comes into another hole is left out. Keeps its working memory from one to the next.
class BarSolids {
public:
    BarSolids();
    ~BarSolids();
    BarSolids(const BarSolids&) = delete;
    BarSolids& operator=(const BarSolids&) = delete;

    // False, and an empty solid, where the cuts leave no length on some side, or a notch's border
    // does not pass through the section as it must.
    bool make(Solid& solid, const BarSection& section, const BarShape& shape);

private:
    std::unique_ptr<BarSolidWork> work_;
};

}  // namespace engine

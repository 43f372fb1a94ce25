// Straight bars as triangles: a section pushed along a line, with round holes across it.
#pragma once

#include "engine/geometry/face_triangles.h"
#include "engine/geometry/mesh.h"
#include "engine/geometry/mesh_writer.h"
#include "engine/geometry/placement.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace engine {

// How the sides of a section meet at a point: in a crisp edge, tangentially, or as the chords of an
// arc that is to look round.
enum class Corner : std::uint8_t { crisp, tangent, round };

// Closed loops in the section's axes x, y, mm: the outline counter-clockwise, then hollows
// clockwise, none crossing or touching another.
struct Profile {
    std::vector<FacePoint> points;
    std::vector<Corner> corners;           // one for each point
    std::vector<std::uint32_t> loop_ends;  // where each loop ends in points

    bool operator==(const Profile&) const = default;
};

// A round hole at right angles to the bar through one wall: between the two sides of the section
// that lie at `from` and `to` along a section axis.
struct CrossHole {
    std::uint8_t axis = 1;  // the section axis along which it is drilled: 0 x, 1 y
    double from = 0.0;      // mm along that axis
    double to = 0.0;
    double across = 0.0;  // its centre along the other section axis, mm
    double along = 0.0;   // its centre from the bar's start, mm
    double radius = 0.0;  // mm
};

// The most that a bar of this section with so many holes appends.
MeshCounts extrusion_counts(const Profile& profile, std::size_t holes);

struct ExtrusionWork;

// Makes bars. Keeps its working memory from one to the next.
class ExtrusionMesher {
public:
    ExtrusionMesher();
    ~ExtrusionMesher();
    ExtrusionMesher(ExtrusionMesher&&) noexcept;
    ExtrusionMesher& operator=(ExtrusionMesher&&) noexcept;
    ExtrusionMesher(const ExtrusionMesher&) = delete;
    ExtrusionMesher& operator=(const ExtrusionMesher&) = delete;

    // Appends a closed bar from z = 0 to `length` in its own axes: every edge belongs to two
    // triangles, and there are no faces inside. A hole that does not lie wholly within its wall or
    // comes into another hole is left out. Gives the number of holes drawn. Appends nothing for a
    // section whose loops cross or touch, or a length that is not above zero.
    std::size_t append(Mesh& mesh,
                       const Profile& profile,
                       double length,
                       std::span<const CrossHole> holes,
                       const Placement& place);

private:
    std::unique_ptr<ExtrusionWork> work_;
};

}  // namespace engine

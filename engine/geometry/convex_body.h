// A convex body with flat faces, as distances and overlaps are reckoned from it: its corners, edges
// and faces in the world, and how they hang together.
#pragma once

#include "engine/geometry/bounds.h"
#include "engine/geometry/convex.h"
#include "engine/geometry/placement.h"

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

namespace engine {

struct BodyFace {
    Vector normal{};      // unit, outward
    double height = 0.0;  // dot(normal, any point of the face); all of the body lies at or below it
    std::uint16_t first = 0;  // its corners in ConvexBody::loops, counter-clockwise from outside
    std::uint16_t count = 0;
};

struct BodyEdge {
    std::array<std::uint16_t, 2> corners{};
    std::array<std::uint16_t, 2> faces{};
};

// A box in any direction, mm.
struct OrientedBox {
    Vector centre{};
    std::array<Vector, 3> axes{};  // unit, at right angles, right-handed
    Vector half{};                 // half its size along each of them
};

// Coordinates in mm. It has volume; make it with the functions below.
struct ConvexBody {
    static constexpr std::size_t most_faces = 128;
    static constexpr std::size_t most_corners = 2 * (most_faces - 2);

    std::vector<Vector> corners;  // each once
    std::vector<BodyEdge> edges;  // each once
    std::vector<BodyFace> faces;
    std::vector<std::uint16_t> loops;
    Bounds bounds;
    OrientedBox around;          // holds the body, closely if it is a bar or a plate
    bool is_along_axes = false;  // `around` lies along the axes of the world: it is `bounds`
};

// Corners closer to each other than this are one, mm. A prism may so run out to a ridge.
inline constexpr double least_edge = 1e-7;

// Either way round. Its side faces are flat; at most ConvexBody::most_faces - 2 corners a face.
ConvexBody convex_body(const Prism& prism);

// The same of what may be no solid: none where it has too many corners, one that is not finite, or
// no thickness.
std::optional<ConvexBody> solid_body(const Prism& prism);

// lo below hi along each axis.
ConvexBody convex_body(const Vector& lo, const Vector& hi);

// The placement may mirror.
ConvexBody moved(const ConvexBody& body, const Placement& place);
ConvexBody moved(ConvexBody body, const Vector& by);

// Smaller by that share of its size, about the middle of the box round it.
ConvexBody shrunk(ConvexBody body, double share);

// The corner that lies furthest along a direction.
const Vector& furthest_corner(const ConvexBody& body, const Vector& along);

// How far a point lies above a face, mm; below 0 on the body's side.
constexpr double height_above(const BodyFace& face, const Vector& at) {
    return dot(face.normal, at) - face.height;
}

}  // namespace engine

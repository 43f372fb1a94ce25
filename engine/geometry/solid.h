// A solid as its exact boundary: flat faces and parts of round cylinders that meet in shared edges.
#pragma once

#include "engine/geometry/placement.h"

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace engine {

// A straight line from one corner to another; or an arc, whose point at an angle t from 0 to
// `angle` is centre + cos t * cosine + sin t * sine. The two half axes are at right angles and as
// long as each other on a circle; on an ellipse they need not be. A whole turn begins and ends at
// one corner.
struct SolidEdge {
    std::uint32_t from = 0;
    std::uint32_t to = 0;
    bool is_arc = false;
    Vector centre{};
    Vector cosine{};
    Vector sine{};
    double angle = 0.0;  // radians, above 0
};

struct EdgeUse {
    std::uint32_t edge = 0;
    bool is_reversed = false;
};

enum class FaceKind : std::uint8_t { plane, cylinder };

// Its loops run counter-clockwise seen from outside, those round a hole in it clockwise; a flat
// face's outline comes first. A cylinder that closes on itself has two loops of one circle each.
struct SolidFace {
    FaceKind kind = FaceKind::plane;
    bool is_hollow = false;  // of a cylinder: the metal lies outside of it
    Vector origin{};         // on the plane, or on the cylinder's axis; mm
    Vector axis{};           // unit: the plane's outward normal, or along the cylinder
    double radius = 0.0;     // mm
    std::uint32_t first_loop = 0;
    std::uint32_t loop_count = 0;
};

// In its own axes, mm. Each edge is used twice, once each way.
struct Solid {
    std::vector<Vector> corners;
    std::vector<SolidEdge> edges;
    std::vector<EdgeUse> uses;             // of all loops, one after the other
    std::vector<std::uint32_t> loop_ends;  // where each loop ends in uses
    std::vector<SolidFace> faces;
    std::uint32_t hole_count = 0;  // round holes through it

    std::span<const EdgeUse> loop(std::size_t index) const {
        const std::size_t first = index == 0 ? 0 : loop_ends[index - 1];
        return std::span(uses).subspan(first, loop_ends[index] - first);
    }
    std::uint32_t first_corner(const EdgeUse& use) const {
        const auto& edge = edges[use.edge];
        return use.is_reversed ? edge.to : edge.from;
    }
};

// The point of an arc at an angle from its start.
Vector point_at(const SolidEdge& arc, double angle);

// Turned over through its plane of y and z.
void mirror(Solid& solid);

// Puts a solid together. Straight edges between the same two corners become one.
class SolidBuilder {
public:
    explicit SolidBuilder(Solid& solid);  // emptied; its memory is kept

    std::uint32_t corner(const Vector& at);
    EdgeUse line(std::uint32_t from, std::uint32_t to);
    EdgeUse arc(const SolidEdge& arc);  // each arc is made once and its use kept by the caller

    void begin(const SolidFace& face);  // its loops follow
    void use(const EdgeUse& use) { solid_.uses.push_back(use); }
    void end_loop();

private:
    struct Link {
        std::uint32_t edge = 0;
        std::uint32_t next = 0;
    };
    void note(std::uint32_t corner, std::uint32_t edge);

    Solid& solid_;
    std::vector<std::uint32_t> first_link_;  // by corner
    std::vector<Link> links_;
};

constexpr EdgeUse reversed(const EdgeUse& use) { return {use.edge, !use.is_reversed}; }

}  // namespace engine

#include "model/resolve/fastener_solid.h"

#include "engine/geometry/placement.h"
#include "engine/geometry/turned_mesh.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

namespace model {
namespace {

// The outside of a set fastener, mm: a head on the first plate, a shank through the stack, and what
// is left beyond the last plate.
struct SetShape {
    double head_radius = 0.0;
    double head_height = 0.0;
    double shank_radius = 0.0;
    double tail_radius = 0.0;
    double tail_height = 0.0;
    double nut_radius = 0.0;  // about the shank, beyond the stack
    double nut_height = 0.0;
};

// How far the formed tail of a blind rivet spreads and stands out, in shank diameters: from memory,
// for the picture only.
constexpr double tail_spread = 1.5;
constexpr double tail_stand = 0.6;

SetShape shape_of(const BlindRivet& rivet) {
    const double diameter = rivet.diameter.mm();
    return {.head_radius = rivet.head_diameter_most.mm() / 2.0,
            .head_height = rivet.head_height_most.mm(),
            .shank_radius = diameter / 2.0,
            .tail_radius = tail_spread * diameter / 2.0,
            .tail_height = tail_stand * diameter};
}

// Nuts are drawn round, as wide as their corners are.
void add_nut(const Catalogue& catalogue, const Fastener& fastener, SetShape& shape) {
    using Kind = FastenerSpec::Kind;
    const auto& spec = fastener.spec;
    const auto& screw = catalogue.screws[spec.index];
    if (spec.kind == Kind::screw_through) {
        shape.nut_radius = screw.nut_width_most.mm() / std::sqrt(3.0);
        shape.nut_height = screw.nut_height_most.mm();
    }
    if (spec.kind == Kind::screw_in_rivet_nut && spec.nut < catalogue.rivet_nuts.size()) {
        const auto& nut = catalogue.rivet_nuts[spec.nut];
        const Nm far = fastener.stack[fastener.stack_count - 1U].thickness;
        shape.nut_radius = nut.rim_diameter.mm() / 2.0;
        shape.nut_height = std::max(0.0, static_cast<double>(nut.body_length.nm() - far) / 1e6);
    }
    shape.tail_height = std::max(shape.tail_height, shape.nut_height);
}

SetShape shape_of(const MachineScrew& screw, const Fastener& fastener) {
    const double radius = screw.diameter.mm() / 2.0;
    const double length =
        fastener.spec.grip < screw.lengths.size() ? screw.lengths[fastener.spec.grip].mm() : 0.0;
    const double grip = static_cast<double>(fastener.grip) / 1e6;
    return {.head_radius = screw.head_diameter_most.mm() / 2.0,
            .head_height = screw.head_height_most.mm(),
            .shank_radius = radius,
            .tail_radius = radius,
            .tail_height = std::max(0.0, length - grip)};
}

std::optional<SetShape> shape_of(const Catalogue& catalogue, const Fastener& fastener) {
    const auto index = fastener.spec.index;
    if (fastener.spec.kind == FastenerSpec::Kind::blind_rivet) {
        if (index >= catalogue.rivets.size()) return std::nullopt;
        return shape_of(catalogue.rivets[index]);
    }
    if (index >= catalogue.screws.size()) return std::nullopt;
    auto shape = shape_of(catalogue.screws[index], fastener);
    add_nut(catalogue, fastener, shape);
    return shape;
}

constexpr int rings = 2;                                          // of a dome
constexpr std::size_t profile_points_most = (rings + 1) + 2 + 5;  // head, shank, tail or nut

// A low dome from the middle of its top out to its rim; z is the depth below the top.
std::vector<engine::TurnedPoint> dome(double radius, double height) {
    const double ball = (radius * radius + height * height) / (2.0 * height);
    std::vector<engine::TurnedPoint> points;
    for (int i = 0; i <= rings; ++i) {
        const double out = radius * i / rings;
        const double depth = ball - std::sqrt(std::max(0.0, ball * ball - out * out));
        points.push_back({.radius = out, .z = depth, .is_crisp = i == rings});
    }
    return points;
}

// Along z: the stack from 0 to `grip`, the head below 0.
std::vector<engine::TurnedPoint> profile_of(const SetShape& shape, double grip) {
    auto profile = dome(shape.head_radius, shape.head_height);
    for (auto& point : profile) point.z -= shape.head_height;
    profile.push_back({.radius = shape.shank_radius, .z = 0.0, .is_crisp = true});
    profile.push_back({.radius = shape.shank_radius, .z = grip, .is_crisp = true});
    const double end = grip + shape.tail_height;
    if (shape.tail_radius > shape.shank_radius) {
        auto tail = dome(shape.tail_radius, shape.tail_height);
        for (auto& point : tail) point.z = end - point.z;
        profile.insert(profile.end(), tail.rbegin(), tail.rend());
        return profile;
    }
    if (shape.nut_radius > shape.shank_radius) {
        const double top = grip + shape.nut_height;
        profile.push_back({.radius = shape.nut_radius, .z = grip, .is_crisp = true});
        profile.push_back({.radius = shape.nut_radius, .z = top, .is_crisp = true});
        if (end > top)
            profile.push_back({.radius = shape.shank_radius, .z = top, .is_crisp = true});
    }
    if (end > grip + shape.nut_height)
        profile.push_back({.radius = shape.shank_radius, .z = end, .is_crisp = true});
    profile.push_back({.radius = 0.0, .z = end});
    return profile;
}

engine::Placement placement_of(const Fastener& fastener, const ResolvedFrame& frame) {
    const auto in_room = to_room(frame, fastener.at);
    std::array<int, 3> drive{};
    drive[fastener.axis] = fastener.drive;
    std::array<int, 3> across{};
    across[(fastener.axis + 1U) % 3U] = 1;
    const auto z = direction_to_room(frame, drive);
    const auto x = direction_to_room(frame, across);
    engine::Placement place;
    for (std::size_t i = 0; i < 3; ++i) {
        place.origin[i] = static_cast<double>(in_room[i]) / 1e6;
        place.x[i] = x[i];
        place.z[i] = z[i];
    }
    place.y = engine::cross(place.z, place.x);
    return place;
}

}  // namespace

engine::MeshCounts fastener_counts() {
    return engine::turned_counts(profile_points_most, engine::Roundness::coarse);
}

void append_fastener_solid(engine::Mesh& mesh,
                           const Resolved& resolved,
                           const Catalogue& catalogue,
                           Index index) {
    const auto& fastener = resolved.fasteners[index];
    const auto shape = shape_of(catalogue, fastener);
    const bool has_head = shape && shape->head_radius > shape->shank_radius &&
                          shape->head_height > 0.0 && shape->head_height <= shape->head_radius;
    if (!has_head) return;
    const auto& frame = resolved.frames[resolved.joints[fastener.joint].frame];
    engine::append_turned(mesh, profile_of(*shape, static_cast<double>(fastener.grip) / 1e6),
                          placement_of(fastener, frame), engine::Roundness::coarse);
}

}  // namespace model

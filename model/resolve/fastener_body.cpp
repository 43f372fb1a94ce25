#include "model/resolve/fastener_body.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

namespace model {
namespace {

// A round part of a fastener: a stretch along its axis, in the frame.
struct RoundPart {
    Nm from = 0;
    Nm to = 0;
    Nm radius = 0;
};

// Head, shank and tail.
std::array<RoundPart, 3> parts_of(const FastenerBody& body) {
    const BodyShape& shape = body.shape;
    const Nm start = body.at[body.axis];
    const auto part = [&](Nm from, Nm to, Nm radius) {
        const Nm a = start + body.drive * from;
        const Nm b = start + body.drive * to;
        return RoundPart{std::min(a, b), std::max(a, b), radius};
    };
    return {part(-shape.head_height, 0, shape.head_radius), part(0, body.grip, shape.shank_radius),
            part(body.grip, body.grip + shape.tail_length, shape.tail_radius)};
}

BodyShape shape_of_rivet(const BlindRivet& rivet) {
    const Nm d = rivet.diameter.nm();
    return {.head_radius = rivet.head_diameter_most.nm() / 2,
            .head_height = rivet.head_height_most.nm(),
            .shank_radius = d / 2,
            .tail_radius = d * 3 / 4,
            .tail_length = d};
}

// Across the corners a hexagon is 2 / sqrt 3 as wide as across its flats.
Nm nut_radius(const MachineScrew& screw) {
    return std::llround(static_cast<double>(screw.nut_width_most.nm()) / std::sqrt(3.0));
}

// How far a value lies outside a stretch.
Nm outside(Nm value, Nm from, Nm to) { return std::max({from - value, value - to, Nm{0}}); }

// Half the width of a round part at `off` from its axis; below zero when it does not reach there.
double half_width(Nm radius, Nm off) {
    if (off >= radius) return -1.0;
    const auto r = static_cast<double>(radius);
    const auto o = static_cast<double>(off);
    return std::sqrt(r * r - o * o);
}

// Two parts whose axes lie square to each other, exactly: along the third axis each covers a
// stretch about its own axis, narrowed by how far the other part ends short of it.
bool crossing_parts_meet(const FastenerBody& f,
                         const RoundPart& p,
                         const FastenerBody& g,
                         const RoundPart& q) {
    const std::size_t third = 3U - f.axis - g.axis;
    const double a = half_width(p.radius, outside(f.at[g.axis], q.from, q.to));
    const double b = half_width(q.radius, outside(g.at[f.axis], p.from, p.to));
    const auto apart = static_cast<double>(std::abs(f.at[third] - g.at[third]));
    return a >= 0 && b >= 0 && apart < a + b;
}

bool parallel_parts_meet(const FastenerBody& f,
                         const RoundPart& p,
                         const FastenerBody& g,
                         const RoundPart& q) {
    if (p.from >= q.to || q.from >= p.to) return false;
    double squared = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        if (i == f.axis) continue;
        const auto d = static_cast<double>(f.at[i] - g.at[i]);
        squared += d * d;
    }
    const auto reach = static_cast<double>(p.radius + q.radius);
    return squared < reach * reach;
}

}  // namespace

BodyShape body_shape(const Catalogue& catalogue, const FastenerSpec& spec, Nm stack, Nm far) {
    using Kind = FastenerSpec::Kind;
    if (spec.kind == Kind::blind_rivet) return shape_of_rivet(catalogue.rivets[spec.index]);
    const MachineScrew& screw = catalogue.screws[spec.index];
    const Nm out = std::max<Nm>(0, screw.lengths[spec.grip].nm() - stack);
    BodyShape shape{.head_radius = screw.head_diameter_most.nm() / 2,
                    .head_height = screw.head_height_most.nm(),
                    .shank_radius = screw.diameter.nm() / 2,
                    .tail_radius = screw.diameter.nm() / 2,
                    .tail_length = out};
    if (spec.kind == Kind::screw_through) {
        shape.tail_radius = nut_radius(screw);
        shape.tail_length = std::max(out, screw.nut_height_most.nm());
    }
    if (spec.kind == Kind::screw_in_rivet_nut && spec.nut != no_index) {
        const RivetNut& nut = catalogue.rivet_nuts[spec.nut];
        shape.tail_radius = nut.rim_diameter.nm() / 2;
        shape.tail_length = std::max(out, nut.body_length.nm() - far);
    }
    return shape;
}

Nm body_reach(const FastenerBody& body) {
    const BodyShape& shape = body.shape;
    return std::max(
        {body.grip + shape.tail_length, shape.head_height, shape.head_radius, shape.tail_radius});
}

bool bodies_meet(const FastenerBody& a, const FastenerBody& b) {
    const Nm reach = body_reach(a) + body_reach(b);
    for (std::size_t i = 0; i < 3; ++i) {
        if (std::abs(a.at[i] - b.at[i]) >= reach) return false;
    }
    for (const auto& p : parts_of(a)) {
        for (const auto& q : parts_of(b)) {
            const bool hit = a.axis == b.axis ? parallel_parts_meet(a, p, b, q)
                                              : crossing_parts_meet(a, p, b, q);
            if (hit) return true;
        }
    }
    return false;
}

}  // namespace model

// The wheel well: horizontal layers, each with the same outline drawn in as the top rounds over.
#include "model/room/shapes.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace model {
namespace {

using Flat = std::array<double, 2>;

// A side seen along the well: how far it stands in from the foot, and the height, rising.
using Side = std::vector<Flat>;

// An upright or leaning side whose top edge is rounded over: the corners of lines that touch it.
// `lean` is the inset for each height.
Side rounded_side(double height, double lean, double radius) {
    Side side{{0.0, 0.0}};
    const double turn = std::numbers::pi / 2.0 - std::atan(lean);  // from the side over to the top
    const double back = radius * std::tan(turn / 2.0);             // from the corner to the touch
    const Flat top{lean * height, height};
    if (!(radius > 0.0)) {
        side.push_back(top);
        return side;
    }
    const Flat centre{top[0] + back, height - radius};
    const std::size_t faces = faces_round(radius, turn);
    const double half = turn / static_cast<double>(faces) / 2.0;
    for (std::size_t i = 0; i < faces; ++i) {
        // Angles from the direction that the side looks to, level and outward for an upright one.
        const double at = std::atan(lean) + half * (2.0 * static_cast<double>(i) + 1.0);
        const double out = radius / std::cos(half);
        side.push_back({centre[0] - out * std::cos(at), centre[1] + out * std::sin(at)});
    }
    side.back()[1] = height;  // there the last line meets the top; rounding apart
    return side;
}

double inset_at(const Side& side, double height) {
    for (std::size_t i = 1; i < side.size(); ++i) {
        if (height > side[i][1]) continue;
        const double span = side[i][1] - side[i - 1][1];
        if (!(span > 0.0)) return side[i - 1][0];
        const double part = (height - side[i - 1][1]) / span;
        return side[i - 1][0] + part * (side[i][0] - side[i - 1][0]);
    }
    return side.back()[0];
}

std::vector<double> heights_of(const Side& a, const Side& b, double height) {
    std::vector<double> heights;
    for (const auto* side : {&a, &b}) {
        for (const auto& corner : *side) heights.push_back(std::clamp(corner[1], 0.0, height));
    }
    std::sort(heights.begin(), heights.end());
    constexpr double thinnest = 1e-4;  // mm: thinner layers are none
    std::vector<double> apart{heights.front()};
    for (const double at : heights) {
        if (at - apart.back() > thinnest) apart.push_back(at);
    }
    apart.back() = height;
    return apart;
}

// Seen from above: out is 0 at the wall and `width` at the inner side's foot, along runs from 0 to
// `length`. The two corners at the inner side are rounded.
struct Well {
    double width = 0.0;
    double length = 0.0;
    double height = 0.0;
    double corner = 0.0;
    Side inner;
    Side end;

    std::vector<Flat> outline(double at) const {
        const double out = width - inset_at(inner, at);
        const double from = inset_at(end, at);
        const double to = length - from;
        std::vector<Flat> corners{{0.0, from}};
        add_corner(corners, {out, from}, 0);
        add_corner(corners, {out, to}, 1);
        corners.push_back({0.0, to});
        return corners;
    }

private:
    // `quarter` 0: where the side along meets the inner side, 1: where that meets the other end.
    void add_corner(std::vector<Flat>& corners, const Flat& at, int quarter) const {
        if (!(corner > 0.0)) {
            corners.push_back(at);
            return;
        }
        const double inward = quarter == 0 ? 1.0 : -1.0;
        const Flat centre{at[0] - corner, at[1] + inward * corner};
        constexpr std::size_t half_of_a_body = 60;  // the outline has two such corners
        const std::size_t faces = faces_round(corner, std::numbers::pi / 2.0, half_of_a_body);
        const double half = std::numbers::pi / 4.0 / static_cast<double>(faces);
        const double begin = quarter == 0 ? -std::numbers::pi / 2.0 : 0.0;
        for (std::size_t i = 0; i < faces; ++i) {
            const double turn = begin + half * (2.0 * static_cast<double>(i) + 1.0);
            const double out = corner / std::cos(half);
            corners.push_back({centre[0] + out * std::cos(turn), centre[1] + out * std::sin(turn)});
        }
    }
};

struct Measures {
    Point least{};
    Point most{};
    double top_radius = 0.0;
    double corner_radius = 0.0;
    double lean = 0.0;
};

// Where the well's own out, along and up lie in the room.
engine::Vector in_room(const WheelWell& well, const Measures& m, const Flat& at, double up) {
    const std::size_t out = index_of(well.inner_side);
    const std::size_t along = 1 - out;
    engine::Vector place{};
    place[out] =
        well.inner_sense == Sense::plus ? mm_of(m.least[out]) + at[0] : mm_of(m.most[out]) - at[0];
    place[along] = mm_of(m.least[along]) + at[1];
    place[2] = mm_of(m.least[2]) + up;
    return place;
}

std::string fault_of(const WheelWell& well, const Measures& m, const Well& flat) {
    constexpr double hair = mm_of(least_measure);
    if (well.inner_side == Axis::z) return "its inner side cannot look along Z: choose X or Y";
    if (auto fault = fault_between(m.least, m.most); !fault.empty()) return fault;
    if (m.top_radius < 0.0 || m.corner_radius < 0.0) return "a radius of it is below 0";
    if (!(m.lean >= 0.0 && m.lean <= 60.0)) return "its lean is not between 0 and 60 degrees";
    if (inset_at(flat.inner, flat.height) + m.corner_radius > flat.width - hair) {
        return "nothing is left of its top: its lean or its radii are too large for its reach";
    }
    if (2.0 * (inset_at(flat.end, flat.height) + m.corner_radius) > flat.length - hair) {
        return "nothing is left of its top: its radii are too large for its length";
    }
    if (m.top_radius > flat.height - hair) return "its top radius is not below its height";
    return {};
}

}  // namespace

SolidObstacle solid_of(const WheelWell& well, const NamedValues& values) {
    const auto least = values.point(well.least);
    const auto most = values.point(well.most);
    const auto top = values.length(well.top_radius);
    const auto corner = values.length(well.corner_radius);
    const auto lean = values.angle(well.lean);
    if (!least || !most || !top || !corner || !lean) return {};
    const Measures m{*least, *most, mm_of(*top), mm_of(*corner), *lean};
    const std::size_t out = well.inner_side == Axis::y ? 1 : 0;
    Well flat{.width = mm_of(m.most[out] - m.least[out]),
              .length = mm_of(m.most[1 - out] - m.least[1 - out]),
              .height = mm_of(m.most[2] - m.least[2]),
              .corner = m.corner_radius};
    const double slope = std::tan(std::clamp(m.lean, 0.0, 60.0) * std::numbers::pi / 180.0);
    flat.inner = rounded_side(flat.height, slope, m.top_radius);
    flat.end = rounded_side(flat.height, 0.0, m.top_radius);
    if (auto fault = fault_of(well, m, flat); !fault.empty()) return {.fault = std::move(fault)};

    SolidObstacle solid;
    const auto heights = heights_of(flat.inner, flat.end, flat.height);
    for (std::size_t i = 0; i + 1 < heights.size(); ++i) {
        engine::Prism layer;
        for (const auto& at : flat.outline(heights[i]))
            layer.near.push_back(in_room(well, m, at, heights[i]));
        for (const auto& at : flat.outline(heights[i + 1]))
            layer.far.push_back(in_room(well, m, at, heights[i + 1]));
        solid.bodies.push_back(std::move(layer));
    }
    return solid;
}

}  // namespace model

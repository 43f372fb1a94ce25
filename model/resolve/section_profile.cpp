#include "model/resolve/section_profile.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace model {
namespace {

using engine::Corner;
using engine::FacePoint;

constexpr int chords_per_corner = 4;

// A corner of an outline whose sides lie along the axes, with its rounding.
struct RoundedCorner {
    FacePoint at{};
    double radius = 0.0;
};

double length_of(const FacePoint& from, const FacePoint& to) {
    return std::abs(to[0] - from[0]) + std::abs(to[1] - from[1]);  // one of them is 0
}

FacePoint direction(const FacePoint& from, const FacePoint& to) {
    const double length = length_of(from, to);
    if (!(length > 0.0)) return {};
    return {(to[0] - from[0]) / length, (to[1] - from[1]) / length};
}

// What the two sides of a corner leave for its rounding.
double room_at(const RoundedCorner& before,
               const FacePoint& at,
               const RoundedCorner& after,
               double least_side) {
    const double one = length_of(before.at, at) - before.radius;
    const double other = length_of(at, after.at) - after.radius;
    return std::max(0.0, std::min(one, other) - least_side);
}

using RoundedLoop = std::vector<RoundedCorner>;

// Roundings that there is room for, with so much of each side left straight.
void fit(RoundedLoop& loop, double least_side) {
    const std::size_t count = loop.size();
    const auto wanted = loop;
    for (std::size_t i = 0; i < count; ++i) {
        const auto& before = wanted[(i + count - 1) % count];
        const auto& after = wanted[(i + 1) % count];
        loop[i].radius =
            std::min(wanted[i].radius, room_at(before, wanted[i].at, after, least_side));
    }
}

RoundedLoop tube_loop(const std::array<FacePoint, 4>& corners, double radius) {
    RoundedLoop loop;
    for (const auto& corner : corners) loop.push_back({corner, radius});
    return loop;
}

// The outline counter-clockwise, then the hollow clockwise.
std::vector<RoundedLoop> rounded_loops(const Section& section) {
    const double a = section.a.mm();
    const double b = section.b.mm();
    const double t = section.thickness.mm();
    const double web = section.web_thickness.mm();
    const double root = section.root_radius.mm();
    const double toe = section.toe_radius.mm();
    switch (section.form) {
        case SectionForm::angle:
            return {{{{0.0, 0.0}},
                     {{a, 0.0}},
                     {{a, t}, toe},
                     {{t, t}, root},
                     {{t, b}, toe},
                     {{0.0, b}}}};
        case SectionForm::flat:
            return {{{{0.0, 0.0}}, {{a, 0.0}}, {{a, t}}, {{0.0, t}}}};
        case SectionForm::channel:
            return {{{{0.0, 0.0}},
                     {{a, 0.0}},
                     {{a, b}},
                     {{a - t, b}, toe},
                     {{a - t, web}, root},
                     {{t, web}, root},
                     {{t, b}, toe},
                     {{0.0, b}}}};
        case SectionForm::tube:
            return {tube_loop({{{0.0, 0.0}, {a, 0.0}, {a, b}, {0.0, b}}}, toe),
                    tube_loop({{{t, t}, {t, b - t}, {a - t, b - t}, {a - t, t}}}, root)};
    }
    return {};
}

void add_corner(engine::Profile& profile,
                const RoundedCorner& corner,
                const FacePoint& before,
                const FacePoint& after) {
    if (!(corner.radius > 0.0)) {
        profile.points.push_back(corner.at);
        profile.corners.push_back(Corner::crisp);
        return;
    }
    const auto in = direction(before, corner.at);
    const auto out = direction(corner.at, after);
    const double radius = corner.radius;
    for (int i = 0; i <= chords_per_corner; ++i) {
        const double angle = std::acos(-1.0) / 2.0 * i / chords_per_corner;
        const double back = radius * (std::sin(angle) - 1.0);
        const double forth = radius * (1.0 - std::cos(angle));
        profile.points.push_back({corner.at[0] + in[0] * back + out[0] * forth,
                                  corner.at[1] + in[1] * back + out[1] * forth});
        const bool is_end = i == 0 || i == chords_per_corner;
        profile.corners.push_back(is_end ? Corner::tangent : Corner::round);
    }
}

void add_loop(engine::Profile& profile, const RoundedLoop& loop) {
    const std::size_t count = loop.size();
    for (std::size_t i = 0; i < count; ++i)
        add_corner(profile, loop[i], loop[(i + count - 1) % count].at, loop[(i + 1) % count].at);
    profile.loop_ends.push_back(static_cast<std::uint32_t>(profile.points.size()));
}

bool is_same(const FacePoint& a, const FacePoint& b) { return length_of(a, b) < 1e-9; }

void add_loop(engine::BarSection& section, const RoundedLoop& loop) {
    std::vector<engine::SectionSide> sides;
    const std::size_t count = loop.size();
    for (std::size_t i = 0; i < count; ++i) {
        const auto& [at, radius] = loop[i];
        if (!(radius > 0.0)) {
            sides.push_back({.from = at});
            continue;
        }
        const auto in = direction(loop[(i + count - 1) % count].at, at);
        const auto out = direction(at, loop[(i + 1) % count].at);
        const FacePoint from{at[0] - in[0] * radius, at[1] - in[1] * radius};
        const FacePoint to{at[0] + out[0] * radius, at[1] + out[1] * radius};
        sides.push_back({.from = from,
                         .is_arc = true,
                         .centre = {from[0] + out[0] * radius, from[1] + out[1] * radius}});
        sides.push_back({.from = to});
    }
    // Where roundings take a whole side, nothing of it stays.
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const auto& next = sides[(i + 1) % sides.size()];
        if (sides[i].is_arc || !is_same(sides[i].from, next.from))
            section.sides.push_back(sides[i]);
    }
    section.loop_ends.push_back(static_cast<std::uint32_t>(section.sides.size()));
}

}  // namespace

engine::Profile rectangle_profile(double a_mm, double b_mm) {
    engine::Profile profile;
    add_loop(profile, {{{0.0, 0.0}}, {{a_mm, 0.0}}, {{a_mm, b_mm}}, {{0.0, b_mm}}});
    return profile;
}

engine::Profile section_profile(const Section& section) {
    engine::Profile profile;
    for (auto& loop : rounded_loops(section)) {
        fit(loop, 1e-3);
        add_loop(profile, loop);
    }
    return profile;
}

engine::BarSection bar_section(const Section& section) {
    engine::BarSection exact;
    for (auto& loop : rounded_loops(section)) {
        fit(loop, 0.0);
        add_loop(exact, loop);
    }
    return exact;
}

}  // namespace model

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
double room_at(const RoundedCorner& before, const FacePoint& at, const RoundedCorner& after) {
    constexpr double least_side = 1e-3;
    const double one = length_of(before.at, at) - before.radius;
    const double other = length_of(at, after.at) - after.radius;
    return std::max(0.0, std::min(one, other) - least_side);
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

void add_loop(engine::Profile& profile, const std::vector<RoundedCorner>& loop) {
    const std::size_t count = loop.size();
    for (std::size_t i = 0; i < count; ++i) {
        const auto& before = loop[(i + count - 1) % count];
        const auto& after = loop[(i + 1) % count];
        auto corner = loop[i];
        corner.radius = std::min(corner.radius, room_at(before, corner.at, after));
        add_corner(profile, corner, before.at, after.at);
    }
    profile.loop_ends.push_back(static_cast<std::uint32_t>(profile.points.size()));
}

engine::Profile tube_profile(double a, double b, double t, double outer) {
    engine::Profile profile;
    const double inner = std::max(0.0, outer - t);
    add_loop(profile, {{{0.0, 0.0}, outer}, {{a, 0.0}, outer}, {{a, b}, outer}, {{0.0, b}, outer}});
    add_loop(profile,
             {{{t, t}, inner}, {{t, b - t}, inner}, {{a - t, b - t}, inner}, {{a - t, t}, inner}});
    return profile;
}

}  // namespace

engine::Profile rectangle_profile(double a_mm, double b_mm) {
    engine::Profile profile;
    add_loop(profile, {{{0.0, 0.0}}, {{a_mm, 0.0}}, {{a_mm, b_mm}}, {{0.0, b_mm}}});
    return profile;
}

engine::Profile section_profile(const Section& section) {
    const double a = section.a.mm();
    const double b = section.b.mm();
    const double t = section.thickness.mm();
    const double web = section.web_thickness.mm();
    const double root = section.root_radius.mm();
    const double toe = section.toe_radius.mm();
    engine::Profile profile;
    switch (section.form) {
        case SectionForm::angle:
            add_loop(profile, {{{0.0, 0.0}},
                               {{a, 0.0}},
                               {{a, t}, toe},
                               {{t, t}, root},
                               {{t, b}, toe},
                               {{0.0, b}}});
            return profile;
        case SectionForm::flat:
            return rectangle_profile(a, t);
        case SectionForm::channel:
            add_loop(profile, {{{0.0, 0.0}},
                               {{a, 0.0}},
                               {{a, b}},
                               {{a - t, b}, toe},
                               {{a - t, web}, root},
                               {{t, web}, root},
                               {{t, b}, toe},
                               {{0.0, b}}});
            return profile;
        case SectionForm::tube:
            return tube_profile(a, b, t, toe);
    }
    return profile;
}

}  // namespace model

#include "engine/geometry/solid_measure.h"

#include "engine/geometry/vectors.h"

#include <cmath>

namespace engine {
namespace {

// What an edge, taken from start to end, adds to the area as a vector about `about`: half the
// integral of place x step.
Vector swept(const Solid& solid, const SolidEdge& edge, const Vector& about) {
    if (!edge.is_arc) {
        const auto a = minus(solid.corners[edge.from], about);
        const auto b = minus(solid.corners[edge.to], about);
        return scaled(cross(a, b), 0.5);
    }
    const auto centre = minus(edge.centre, about);
    const auto chord = plus(scaled(edge.cosine, std::cos(edge.angle) - 1.0),
                            scaled(edge.sine, std::sin(edge.angle)));
    const auto sector = scaled(cross(edge.cosine, edge.sine), edge.angle);
    return scaled(plus(cross(centre, chord), sector), 0.5);
}

Vector middle_of(const Solid& solid, std::span<const EdgeUse> loop) {
    Vector sum{};
    for (const auto& use : loop) sum = plus(sum, solid.corners[solid.first_corner(use)]);
    return scaled(sum, 1.0 / static_cast<double>(loop.size()));
}

void add_plane(const Solid& solid, const SolidFace& face, SolidMeasure& sum) {
    const auto middle = middle_of(solid, solid.loop(face.first_loop));
    Vector area{};
    for (std::uint32_t i = 0; i < face.loop_count; ++i) {
        for (const auto& use : solid.loop(face.first_loop + i)) {
            const auto part = swept(solid, solid.edges[use.edge], middle);
            area = use.is_reversed ? minus(area, part) : plus(area, part);
        }
    }
    sum.volume += dot(middle, area) / 3.0;
    sum.surface += length_of(area);
}

// constant + cosine cos t + sine sin t
struct Wave {
    double constant = 0.0;
    double cosine = 0.0;
    double sine = 0.0;
};

// The integral of f g over t from 0 to `end`.
double integral(const Wave& f, const Wave& g, double end) {
    const double c = std::cos(end);
    const double s = std::sin(end);
    return f.constant * g.constant * end + (f.constant * g.cosine + f.cosine * g.constant) * s +
           (f.constant * g.sine + f.sine * g.constant) * (1.0 - c) +
           f.cosine * g.cosine * (end + s * c) / 2.0 + f.sine * g.sine * (end - s * c) / 2.0 +
           (f.cosine * g.sine + f.sine * g.cosine) * s * s / 2.0;
}

// The loops of a cylinder in its angle and height: of f(angle) over the face, Green's theorem
// leaves minus the integral of f * height along the loops, where the angle grows to the left.
void add_cylinder(const Solid& solid, const SolidFace& face, SolidMeasure& sum) {
    double place = 0.0;  // of place * radial direction
    double turned = 0.0;
    for (std::uint32_t i = 0; i < face.loop_count; ++i) {
        for (const auto& use : solid.loop(face.first_loop + i)) {
            const auto& arc = solid.edges[use.edge];
            if (!arc.is_arc) continue;  // along the axis: no change of angle
            const auto along = [&](const Vector& v) { return dot(v, face.axis); };
            const auto across = [&](const Vector& v) {
                return scaled(minus(v, scaled(face.axis, along(v))), 1.0 / face.radius);
            };
            const Wave height{along(minus(arc.centre, face.origin)), along(arc.cosine),
                              along(arc.sine)};
            const Wave reach{face.radius, dot(face.origin, across(arc.cosine)),
                             dot(face.origin, across(arc.sine))};
            const bool is_left = along(cross(arc.cosine, arc.sine)) > 0.0;
            const double sense = is_left != use.is_reversed ? 1.0 : -1.0;
            place -= sense * integral(reach, height, arc.angle);
            turned -= sense * integral({1.0, 0.0, 0.0}, height, arc.angle);
        }
    }
    sum.volume += face.radius * place / 3.0;
    sum.surface += face.radius * std::abs(turned);
}

}  // namespace

SolidMeasure measure_of(const Solid& solid) {
    SolidMeasure sum;
    for (const auto& face : solid.faces) {
        if (face.kind == FaceKind::plane) {
            add_plane(solid, face, sum);
        } else {
            add_cylinder(solid, face, sum);
        }
    }
    return sum;
}

}  // namespace engine

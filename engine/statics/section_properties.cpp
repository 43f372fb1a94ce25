#include "engine/statics/section_properties.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace engine {
namespace {

using Vertex = std::array<double, 2>;

// Calls with both ends of every edge of every loop.
template <class Use>
void for_each_edge(const SectionShape& shape, Use use) {
    for (const auto& loop : shape.loops) {
        for (std::size_t i = 0; i < loop.size(); ++i) use(loop[i], loop[(i + 1) % loop.size()]);
    }
}

struct Moments {
    double area = 0.0;
    double a = 0.0;  // first moments about the axes through `origin`
    double b = 0.0;
    double aa = 0.0;  // second moments about them
    double bb = 0.0;
    double ab = 0.0;
};

// Green's theorem: the triangle from the origin to each edge, with its sign.
Moments moments_about(const SectionShape& shape, Vertex origin) {
    Moments sum;
    for_each_edge(shape, [&](Vertex p, Vertex q) {
        const double x0 = p[0] - origin[0];
        const double y0 = p[1] - origin[1];
        const double x1 = q[0] - origin[0];
        const double y1 = q[1] - origin[1];
        const double cross = x0 * y1 - x1 * y0;
        sum.area += cross / 2.0;
        sum.a += cross * (x0 + x1) / 6.0;
        sum.b += cross * (y0 + y1) / 6.0;
        sum.aa += cross * (x0 * x0 + x0 * x1 + x1 * x1) / 12.0;
        sum.bb += cross * (y0 * y0 + y0 * y1 + y1 * y1) / 12.0;
        sum.ab += cross * (x0 * y1 + 2.0 * x0 * y0 + 2.0 * x1 * y1 + x1 * y0) / 24.0;
    });
    return sum;
}

struct Share {
    double area = 0.0;
    double first_moment = 0.0;  // about the dividing line, not positive
};

// What of the section lies below `line` along `axis`. Cut into slices across the axis, a slice from
// the boundary upwards counts only as far as the line: area = -contour integral of min(v, 0) du.
Share below(const SectionShape& shape, std::size_t axis, double line) {
    Share share;
    const double turn = axis == 1 ? -1.0 : 1.0;
    for_each_edge(shape, [&](Vertex p, Vertex q) {
        double v0 = p[axis] - line;
        double v1 = q[axis] - line;
        if (v0 >= 0.0 && v1 >= 0.0) return;
        double width = turn * (q[1 - axis] - p[1 - axis]);
        if (v0 > 0.0 || v1 > 0.0) {  // only the part of the edge below the line
            const double low = std::min(v0, v1);
            width *= low / (low - std::max(v0, v1));
            v0 = low;
            v1 = 0.0;
        }
        share.area += width * (v0 + v1) / 2.0;
        share.first_moment += width * (v0 * v0 + v0 * v1 + v1 * v1) / 6.0;
    });
    return share;
}

// First moments of the halves of equal area about the line that parts them (the plastic neutral
// axis); `level` is where the centroid lies.
double plastic_modulus(const SectionShape& shape, std::size_t axis, double area, double level) {
    double low = level;
    double high = level;
    for_each_edge(shape, [&](Vertex p, Vertex) {
        low = std::min(low, p[axis]);
        high = std::max(high, p[axis]);
    });
    constexpr int halvings = 60;
    for (int i = 0; i < halvings; ++i) {
        const double middle = (low + high) / 2.0;
        (below(shape, axis, middle).area < area / 2.0 ? low : high) = middle;
    }
    const double line = (low + high) / 2.0;
    return area * (level - line) - 2.0 * below(shape, axis, line).first_moment;
}

void find_principal_axes(SectionProperties& of) {
    const double mean = (of.ix + of.iy) / 2.0;
    const double half = (of.ix - of.iy) / 2.0;
    const double radius = std::hypot(half, of.ixy);
    of.i_major = mean + radius;
    of.i_minor = mean - radius;
    // Every axis is principal where both moments are equal; then the first axis serves.
    constexpr double negligible = 1e-12;
    if (radius > negligible * mean) of.major_angle = std::atan2(-of.ixy, half) / 2.0;
}

}  // namespace

SectionProperties polygon_properties(const SectionShape& shape) {
    SectionProperties of;
    if (shape.loops.empty() || shape.loops.front().empty()) return of;
    // Twice, the second time about the centroid itself, to lose no digits to a far origin.
    const auto origin = shape.loops.front().front();
    const auto rough = moments_about(shape, origin);
    if (rough.area <= 0.0) return of;
    of.area = rough.area;
    of.centroid = {origin[0] + rough.a / rough.area, origin[1] + rough.b / rough.area};
    const auto central = moments_about(shape, of.centroid);
    of.ix = central.bb;
    of.iy = central.aa;
    of.ixy = central.ab;
    find_principal_axes(of);
    of.r_minor = std::sqrt(std::max(of.i_minor, 0.0) / of.area);
    of.zx = plastic_modulus(shape, 1, of.area, of.centroid[1]);
    of.zy = plastic_modulus(shape, 0, of.area, of.centroid[0]);
    return of;
}

}  // namespace engine

#include "tests/support/skeleton_bodies.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace tests {
namespace {

// Depths less than this, in mm, are rounding of oblique corners.
constexpr double oblique_slack = 2e-6;

using Loop = std::vector<std::array<Nm, 2>>;

Direction between(const Direction& from, const Direction& to) {
    return {to[0] - from[0], to[1] - from[1], to[2] - from[2]};
}

Point placed(const SkeletonPlate& plate, std::array<Nm, 2> at, Nm depth) {
    Point p = plate.origin;
    for (std::size_t i = 0; i < 3; ++i) {
        p[i] += static_cast<Nm>(std::llround(plate.u[i] * static_cast<double>(at[0]))) +
                static_cast<Nm>(std::llround(plate.v[i] * static_cast<double>(at[1]))) +
                static_cast<Nm>(std::llround(plate.n[i] * static_cast<double>(depth)));
    }
    return p;
}

Direction in_mm(const Point& p) {
    return {static_cast<double>(p[0]) / 1e6, static_cast<double>(p[1]) / 1e6,
            static_cast<double>(p[2]) / 1e6};
}

Box box_over(const std::vector<Point>& points) {
    Box box{points.front(), points.front()};
    for (const auto& p : points) box = hull(box, Box{p, p});
    return box;
}

// Twice the area to the left of a -> b that c spans.
double turn(std::array<Nm, 2> a, std::array<Nm, 2> b, std::array<Nm, 2> c) {
    return static_cast<double>(b[0] - a[0]) * static_cast<double>(c[1] - a[1]) -
           static_cast<double>(b[1] - a[1]) * static_cast<double>(c[0] - a[0]);
}

// From a loop on the outer face and the one on the far face, corner by corner.
ConvexBody body_between(const SkeletonPlate& plate, const Loop& near, const Loop& far) {
    ConvexBody body;
    std::vector<Point> points;
    for (const auto& at : near) points.push_back(placed(plate, at, 0));
    for (const auto& at : far) points.push_back(placed(plate, at, plate.thickness));
    for (const auto& p : points) body.corners.push_back(in_mm(p));
    body.bounds = box_over(points);
    body.normals.push_back(plate.n);
    const auto sides = [&](std::size_t first, std::size_t count) {
        for (std::size_t i = 0; i < count; ++i) {
            const auto& p = body.corners[first + i];
            const auto& q = body.corners[first + (i + 1) % count];
            body.edges.push_back(between(p, q));
            const bool is_paired = near.size() == far.size();
            const Direction across =
                is_paired ? between(body.corners[i], body.corners[near.size() + i]) : plate.n;
            body.normals.push_back(cross(body.edges.back(), across));
            if (first == 0 && is_paired) body.edges.push_back(across);
        }
    };
    sides(0, near.size());
    sides(near.size(), far.size());
    return body;
}

bool is_along_the_plate(const Loop& loop) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& next = loop[(i + 1) % loop.size()];
        if (loop[i][0] != next[0] && loop[i][1] != next[1]) return false;
    }
    return true;
}

bool is_convex(const Loop& loop) {
    bool left = false;
    bool right = false;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const double way = turn(loop[i], loop[(i + 1) % loop.size()], loop[(i + 2) % loop.size()]);
        left |= way > 0;
        right |= way < 0;
    }
    return !(left && right);
}

// By the crossings of a line from the point along plus u; on no corner's v.
bool is_in(const Loop& loop, double u, double v) {
    bool inside = false;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& a = loop[i];
        const auto& b = loop[(i + 1) % loop.size()];
        const auto av = static_cast<double>(a[1]);
        const auto bv = static_cast<double>(b[1]);
        if ((av > v) == (bv > v)) continue;
        const auto au = static_cast<double>(a[0]);
        const double at = au + (v - av) / (bv - av) * (static_cast<double>(b[0]) - au);
        inside ^= at > u;
    }
    return inside;
}

bool is_filled(const SkeletonPlate& plate, double u, double v) {
    return is_in(plate.outline, u, v) &&
           std::none_of(plate.cut_outs.begin(), plate.cut_outs.end(),
                        [&](const Loop& loop) { return is_in(loop, u, v); });
}

ConvexBody box_body(const SkeletonPlate& plate, std::array<Nm, 2> least, std::array<Nm, 2> most) {
    const Loop loop{least, {most[0], least[1]}, most, {least[0], most[1]}};
    ConvexBody body = body_between(plate, loop, loop);
    if (is_squared(plate)) body.box = body.bounds;
    return body;
}

// Cells between the corners' own lines, runs of filled ones taken together.
std::vector<ConvexBody> boxes_of(const SkeletonPlate& plate) {
    std::set<Nm> us;
    std::set<Nm> vs;
    const auto note = [&](const Loop& loop) {
        for (const auto& [u, v] : loop) {
            us.insert(u);
            vs.insert(v);
        }
    };
    note(plate.outline);
    for (const auto& loop : plate.cut_outs) note(loop);
    const std::vector<Nm> columns(us.begin(), us.end());
    const std::vector<Nm> rows(vs.begin(), vs.end());
    std::vector<ConvexBody> bodies;
    for (std::size_t r = 0; r + 1 < rows.size(); ++r) {
        const double v = static_cast<double>(rows[r] + rows[r + 1]) / 2;
        std::size_t begin = 0;
        for (std::size_t c = 0; c + 1 <= columns.size(); ++c) {
            const bool filled =
                c + 1 < columns.size() &&
                is_filled(plate, static_cast<double>(columns[c] + columns[c + 1]) / 2, v);
            if (filled) continue;
            if (c > begin) {
                bodies.push_back(
                    box_body(plate, {columns[begin], rows[r]}, {columns[c], rows[r + 1]}));
            }
            begin = c + 1;
        }
    }
    return bodies;
}

// Triangles by cutting off one ear after the other; corners counter-clockwise.
std::vector<std::array<std::size_t, 3>> triangles_of(const Loop& loop) {
    std::vector<std::size_t> left(loop.size());
    for (std::size_t i = 0; i < left.size(); ++i) left[i] = i;
    std::vector<std::array<std::size_t, 3>> triangles;
    const auto is_ear = [&](std::size_t a, std::size_t b, std::size_t c) {
        if (turn(loop[a], loop[b], loop[c]) <= 0) return false;
        return std::none_of(left.begin(), left.end(), [&](std::size_t p) {
            return p != a && p != b && p != c && turn(loop[a], loop[b], loop[p]) >= 0 &&
                   turn(loop[b], loop[c], loop[p]) >= 0 && turn(loop[c], loop[a], loop[p]) >= 0;
        });
    };
    while (left.size() > 3) {
        std::size_t i = 0;
        while (i < left.size() && !is_ear(left[(i + left.size() - 1) % left.size()], left[i],
                                          left[(i + 1) % left.size()])) {
            ++i;
        }
        if (i == left.size()) i = 0;  // corners in one line: nothing is lost
        triangles.push_back(
            {left[(i + left.size() - 1) % left.size()], left[i], left[(i + 1) % left.size()]});
        left.erase(left.begin() + static_cast<std::ptrdiff_t>(i));
    }
    if (left.size() == 3) triangles.push_back({left[0], left[1], left[2]});
    return triangles;
}

std::array<double, 2> range_along(const Direction& axis, const ConvexBody& body) {
    std::array<double, 2> range{dot(axis, body.corners[0]), dot(axis, body.corners[0])};
    for (const auto& corner : body.corners) {
        range[0] = std::min(range[0], dot(axis, corner));
        range[1] = std::max(range[1], dot(axis, corner));
    }
    return range;
}

bool parted_by(const Direction& axis, const ConvexBody& a, const ConvexBody& b) {
    const double size = std::sqrt(dot(axis, axis));
    if (size < 1e-9) return false;
    const auto ra = range_along(axis, a);
    const auto rb = range_along(axis, b);
    const double slack = oblique_slack * size;
    return ra[1] <= rb[0] + slack || rb[1] <= ra[0] + slack;
}

}  // namespace

std::vector<ConvexBody> bodies_of(const SkeletonPlate& plate) {
    if (plate.outline.size() < 3) return {};
    const bool is_bevelled = !plate.outline_far.empty();
    const bool is_straight =
        is_along_the_plate(plate.outline) &&
        std::all_of(plate.cut_outs.begin(), plate.cut_outs.end(), is_along_the_plate);
    if (!is_bevelled && is_straight) return boxes_of(plate);
    const Loop& far = is_bevelled ? plate.outline_far : plate.outline;
    if (is_convex(plate.outline) && is_convex(far)) {
        return {body_between(plate, plate.outline, far)};
    }
    std::vector<ConvexBody> bodies;
    for (const auto& [a, b, c] : triangles_of(plate.outline)) {
        const Loop near_part{plate.outline[a], plate.outline[b], plate.outline[c]};
        const bool is_paired = far.size() == plate.outline.size();
        const Loop far_part = is_paired ? Loop{far[a], far[b], far[c]} : near_part;
        bodies.push_back(body_between(plate, near_part, far_part));
    }
    return bodies;
}

ConvexBody body_of(const Box& box) {
    ConvexBody body;
    body.box = body.bounds = box;
    for (int corner = 0; corner < 8; ++corner) {
        Point at = box.lo;
        for (std::size_t k = 0; k < 3; ++k) {
            if ((corner >> k) & 1) at[k] = box.hi[k];
        }
        body.corners.push_back(in_mm(at));
    }
    body.normals = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    body.edges = body.normals;
    return body;
}

// Separating axes of two convex bodies: their faces' normals and what is square to an edge of each.
bool share_volume(const ConvexBody& a, const ConvexBody& b) {
    if (a.box && b.box) return overlaps(*a.box, *b.box);
    if (!overlaps(a.bounds, b.bounds)) return false;
    const auto parts = [&](const Direction& axis) { return parted_by(axis, a, b); };
    if (std::any_of(a.normals.begin(), a.normals.end(), parts)) return false;
    if (std::any_of(b.normals.begin(), b.normals.end(), parts)) return false;
    for (const auto& e : a.edges) {
        for (const auto& f : b.edges) {
            if (parts(cross(e, f))) return false;
        }
    }
    return true;
}

}  // namespace tests

#include "engine/geometry/convex_body.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <span>
#include <utility>

namespace engine {
namespace {

using Corner = std::uint16_t;

Corner corner_at(std::vector<Vector>& corners, const Vector& at) {
    for (std::size_t i = 0; i < corners.size(); ++i) {
        if (std::abs(corners[i][0] - at[0]) >= least_edge) continue;
        if (length_of(minus(corners[i], at)) < least_edge) return static_cast<Corner>(i);
    }
    corners.push_back(at);
    return static_cast<Corner>(corners.size() - 1);
}

// Newell's sum: twice the area, along the normal; right also where corners are nearly in a line.
Vector area_of(const std::vector<Vector>& corners, std::span<const Corner> loop) {
    Vector sum{};
    const Vector& origin = corners[loop[0]];
    for (std::size_t i = 1; i + 1 < loop.size(); ++i) {
        sum =
            plus(sum, cross(minus(corners[loop[i]], origin), minus(corners[loop[i + 1]], origin)));
    }
    return sum;
}

std::span<const Corner> loop_of(const ConvexBody& body, const BodyFace& face) {
    return std::span(body.loops).subspan(face.first, face.count);
}

Vector middle_of(const std::vector<Vector>& corners) {
    Vector sum{};
    for (const auto& corner : corners) sum = plus(sum, corner);
    return scaled(sum, 1.0 / static_cast<double>(corners.size()));
}

void add_face(ConvexBody& body, std::vector<Corner> loop, const Vector& inside) {
    loop.erase(std::unique(loop.begin(), loop.end()), loop.end());
    while (loop.size() > 1 && loop.front() == loop.back()) loop.pop_back();
    if (loop.size() < 3) return;
    Vector normal = unit(area_of(body.corners, loop));
    if (dot(normal, minus(body.corners[loop[0]], inside)) < 0.0) {
        std::reverse(loop.begin(), loop.end());
        normal = scaled(normal, -1.0);
    }
    body.faces.push_back({.normal = normal,
                          .height = dot(normal, furthest_corner(body, normal)),
                          .first = static_cast<Corner>(body.loops.size()),
                          .count = static_cast<Corner>(loop.size())});
    body.loops.insert(body.loops.end(), loop.begin(), loop.end());
}

// The sides of all faces in order bring both sides of an edge together.
void add_edges(ConvexBody& body) {
    struct Side {
        std::uint32_t corners;  // both, the lower first
        Corner face;
    };
    std::vector<Side> sides;
    sides.reserve(body.loops.size());
    for (std::size_t f = 0; f < body.faces.size(); ++f) {
        const auto loop = loop_of(body, body.faces[f]);
        std::uint32_t last = loop.back();
        for (const std::uint32_t next : loop) {
            sides.push_back(
                {(std::min(last, next) << 16U) + std::max(last, next), static_cast<Corner>(f)});
            last = next;
        }
    }
    std::ranges::sort(sides, {}, &Side::corners);
    body.edges.reserve(sides.size() / 2);
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const auto [corners, face] = sides[i];
        if (i > 0 && sides[i - 1].corners == corners) {
            body.edges.back().faces[1] = face;
        } else {
            body.edges.push_back(
                {{static_cast<Corner>(corners >> 16U), static_cast<Corner>(corners & 0xffffU)},
                 {face, face}});
        }
    }
}

// Along the largest face and its longest edge.
std::array<Vector, 3> main_axes(const ConvexBody& body) {
    double largest = -1.0;
    const BodyFace* base = nullptr;
    for (const auto& face : body.faces) {
        const double area = length_of(area_of(body.corners, loop_of(body, face)));
        if (area <= largest) continue;
        largest = area;
        base = &face;
    }
    const auto loop = loop_of(body, *base);
    Vector longest{};
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const Vector edge = minus(body.corners[loop[(i + 1) % loop.size()]], body.corners[loop[i]]);
        if (dot(edge, edge) > dot(longest, longest)) longest = edge;
    }
    const Vector& up = base->normal;
    const Vector along = unit(minus(longest, scaled(up, dot(longest, up))));
    return {along, cross(up, along), up};
}

OrientedBox box_around(const std::vector<Vector>& corners, const std::array<Vector, 3>& axes) {
    OrientedBox box{.axes = axes};
    for (std::size_t k = 0; k < 3; ++k) {
        double least = std::numeric_limits<double>::max();
        double most = std::numeric_limits<double>::lowest();
        for (const auto& corner : corners) {
            const double at = dot(corner, axes[k]);
            least = std::min(least, at);
            most = std::max(most, at);
        }
        box.centre = plus(box.centre, scaled(axes[k], (least + most) / 2.0));
        box.half[k] = (most - least) / 2.0;
    }
    return box;
}

bool is_along_an_axis(const Vector& direction) { return std::ranges::count(direction, 0.0) == 2; }

void set_bounds(ConvexBody& body) {
    body.bounds = {};
    for (const auto& corner : body.corners) put_in(body.bounds, corner);
    body.is_along_axes = std::ranges::all_of(body.around.axes, is_along_an_axis);
}

bool can_be_body(const Prism& prism) {
    const std::size_t n = prism.near.size();
    return n >= 3 && n == prism.far.size() && n + 2 <= ConvexBody::most_faces;
}

bool is_finite(const std::vector<Vector>& corners) {
    return std::ranges::all_of(corners, [](const Vector& at) {
        return std::isfinite(at[0]) && std::isfinite(at[1]) && std::isfinite(at[2]);
    });
}

// Corners and faces; of what has no thickness these may be too few.
ConvexBody with_faces(const Prism& prism) {
    const std::size_t n = prism.near.size();
    ConvexBody body;
    body.corners.reserve(2 * n);
    std::vector<Corner> near(n);
    std::vector<Corner> far(n);
    for (std::size_t i = 0; i < n; ++i) near[i] = corner_at(body.corners, prism.near[i]);
    for (std::size_t i = 0; i < n; ++i) far[i] = corner_at(body.corners, prism.far[i]);
    body.faces.reserve(n + 2);
    body.loops.reserve(6 * n);
    const Vector inside = middle_of(body.corners);
    add_face(body, near, inside);
    add_face(body, far, inside);
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t next = (i + 1) % n;
        add_face(body, {near[i], near[next], far[next], far[i]}, inside);
    }
    return body;
}

constexpr std::size_t least_faces = 4;

void finish(ConvexBody& body) {
    add_edges(body);
    body.around = box_around(body.corners, main_axes(body));
    set_bounds(body);
}

}  // namespace

ConvexBody convex_body(const Prism& prism) {
    assert(can_be_body(prism));
    ConvexBody body = with_faces(prism);
    assert(body.faces.size() >= least_faces);
    finish(body);
    return body;
}

std::optional<ConvexBody> solid_body(const Prism& prism) {
    if (!can_be_body(prism) || !is_finite(prism.near) || !is_finite(prism.far)) return std::nullopt;
    ConvexBody body = with_faces(prism);
    if (body.faces.size() < least_faces) return std::nullopt;
    finish(body);
    const double thickness = 2.0 * *std::ranges::min_element(body.around.half);
    return thickness > least_edge ? std::optional(std::move(body)) : std::nullopt;
}

ConvexBody convex_body(const Vector& lo, const Vector& hi) {
    assert(lo[0] < hi[0] && lo[1] < hi[1] && lo[2] < hi[2]);
    ConvexBody body;
    body.corners.reserve(8);
    for (unsigned k = 0; k < 8; ++k) {
        body.corners.push_back({(k & 1U) != 0 ? hi[0] : lo[0], (k & 2U) != 0 ? hi[1] : lo[1],
                                (k & 4U) != 0 ? hi[2] : lo[2]});
    }
    // Faces 0 and 1 are the lower and the upper one along x, and so on.
    body.loops = {0, 4, 6, 2, 1, 3, 7, 5, 0, 1, 5, 4, 2, 6, 7, 3, 0, 2, 3, 1, 4, 5, 7, 6};
    body.faces.reserve(6);
    for (std::size_t f = 0; f < 6; ++f) {
        const bool is_upper = f % 2 == 1;
        BodyFace face{.height = is_upper ? hi[f / 2] : -lo[f / 2],
                      .first = static_cast<Corner>(4 * f),
                      .count = 4};
        face.normal[f / 2] = is_upper ? 1.0 : -1.0;
        body.faces.push_back(face);
    }
    body.edges = {{{0, 1}, {2, 4}}, {{2, 3}, {3, 4}}, {{4, 5}, {2, 5}}, {{6, 7}, {3, 5}},
                  {{0, 2}, {0, 4}}, {{1, 3}, {1, 4}}, {{4, 6}, {0, 5}}, {{5, 7}, {1, 5}},
                  {{0, 4}, {0, 2}}, {{1, 5}, {1, 2}}, {{2, 6}, {0, 3}}, {{3, 7}, {1, 3}}};
    body.bounds = {lo, hi};
    body.around = {.centre = scaled(plus(lo, hi), 0.5),
                   .axes = {{{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}}},
                   .half = scaled(minus(hi, lo), 0.5)};
    body.is_along_axes = true;
    return body;
}

ConvexBody moved(const ConvexBody& body, const Placement& place) {
    ConvexBody out = body;
    for (auto& corner : out.corners) corner = point_in(place, corner);
    const bool mirrors = is_mirrored(place);
    for (auto& face : out.faces) {
        face.normal = direction_in(place, face.normal);
        face.height = dot(face.normal, out.corners[out.loops[face.first]]);
        if (!mirrors) continue;
        const auto first = out.loops.begin() + face.first;
        std::reverse(first, first + face.count);
    }
    out.around.centre = point_in(place, body.around.centre);
    for (auto& axis : out.around.axes) axis = direction_in(place, axis);
    if (mirrors) out.around.axes[2] = scaled(out.around.axes[2], -1.0);
    set_bounds(out);
    return out;
}

ConvexBody moved(ConvexBody body, const Vector& by) {
    for (auto& corner : body.corners) corner = plus(corner, by);
    for (auto& face : body.faces) face.height += dot(face.normal, by);
    body.bounds = {plus(body.bounds.lo, by), plus(body.bounds.hi, by)};
    body.around.centre = plus(body.around.centre, by);
    return body;
}

ConvexBody shrunk(ConvexBody body, double share) {
    const Vector middle = body.around.centre;
    body.bounds = {};
    for (auto& corner : body.corners) {
        corner = plus(corner, scaled(minus(middle, corner), share));
        put_in(body.bounds, corner);
    }
    for (auto& face : body.faces) face.height += share * (dot(face.normal, middle) - face.height);
    body.around.half = scaled(body.around.half, 1.0 - share);
    return body;
}

const Vector& furthest_corner(const ConvexBody& body, const Vector& along) {
    return *std::ranges::max_element(body.corners, {},
                                     [&](const Vector& corner) { return dot(corner, along); });
}

}  // namespace engine

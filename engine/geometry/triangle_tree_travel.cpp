#include "engine/geometry/convex_overlap.h"
#include "engine/geometry/triangle_tree.h"
#include "engine/geometry/vectors.h"

#include <algorithm>

namespace engine {
namespace {

// As far as a body is long along the direction, so that a step looks at about as many triangles as
// the body has around it.
double step_of(std::span<const ConvexBody> bodies, const Vector& direction) {
    constexpr double least_step = 1.0;
    double step = least_step;
    for (const auto& body : bodies) {
        const Vector back = scaled(direction, -1.0);
        step = std::max(step, dot(direction, furthest_corner(body, direction)) +
                                  dot(back, furthest_corner(body, back)));
    }
    return step;
}

}  // namespace

std::optional<double> TriangleTree::shift_to_clear(std::span<const ConvexBody> bodies,
                                                   const Vector& direction,
                                                   double most) const {
    const double step = step_of(bodies, direction);
    const auto facets = facets_of(bodies);
    double at = 0.0;
    std::vector<Passage> blocked;
    while (at <= most) {
        blocked.clear();
        for (const auto& body : facets) {
            for_each_touching(swept(body.bounds, direction, at, at + step),
                              [&](std::uint32_t, const Triangle& triangle) {
                                  const auto through = passage(body, triangle, direction);
                                  if (through && through->to > at) blocked.push_back(*through);
                              });
        }
        const double end = end_of_blocked(blocked, at);
        const bool may_go_on = end > at + step;
        at = end;
        if (!may_go_on) break;
    }
    if (at > most) return std::nullopt;
    return at;
}

double TriangleTree::free_way(std::span<const ConvexBody> bodies,
                              const Vector& direction,
                              double most) const {
    const double step = step_of(bodies, direction);
    const auto facets = facets_of(bodies);
    double free = most;
    for (double at = 0.0; at < free; at += step) {
        for (const auto& body : facets) {
            for_each_touching(swept(body.bounds, direction, at, std::min(at + step, free)),
                              [&](std::uint32_t, const Triangle& triangle) {
                                  const auto through = passage(body, triangle, direction);
                                  if (through && through->to > 0.0)
                                      free = std::min(free, std::max(0.0, through->from));
                              });
        }
    }
    return free;
}

}  // namespace engine

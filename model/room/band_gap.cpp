#include "model/room/band_gap.h"

#include "engine/geometry/convex_distance.h"
#include "engine/geometry/convex_overlap.h"
#include "engine/geometry/vectors.h"
#include "model/room/rounding.h"
#include "model/room/scan_side.h"
#include "model/room/shapes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace model {
namespace {

using engine::Bounds;
using engine::ConvexBody;
using engine::Vector;

bool is_there(const Bounds& bounds) { return bounds.lo[0] <= bounds.hi[0]; }

// How far any point of an upright box comes between two places of it.
double way_of(const Bounds& before, const Bounds& after) {
    double squared = 0.0;
    for (std::size_t k = 0; k < 3; ++k) {
        const double way =
            std::max(std::abs(after.lo[k] - before.lo[k]), std::abs(after.hi[k] - before.hi[k]));
        squared += way * way;
    }
    return std::sqrt(squared);
}

// Something at both ends of the gap.
template <class T>
struct Both {
    const T& a;
    const T& b;
};

// One plane across an axis parts them at both ends, so far apart.
bool parted_across_axes(const Both<Bounds>& one, const Both<Bounds>& other, double apart) {
    const double enough = apart - rounding_mm;
    for (std::size_t k = 0; k < 3; ++k) {
        if (other.a.lo[k] - one.a.hi[k] >= enough && other.b.lo[k] - one.b.hi[k] >= enough)
            return true;
        if (one.a.lo[k] - other.a.hi[k] >= enough && one.b.lo[k] - other.b.hi[k] >= enough)
            return true;
    }
    return false;
}

double room_along(const ConvexBody& one, const ConvexBody& other, const Vector& direction) {
    const Vector back = engine::scaled(direction, -1.0);
    return engine::dot(direction, engine::furthest_corner(other, back)) -
           engine::dot(direction, engine::furthest_corner(one, direction));
}

// From one to the other where they are nearest; where they touch, in which they do not share a
// place.
Vector direction_between(const ConvexBody& one, const ConvexBody& other) {
    const auto near = engine::nearest(one, other);
    if (near.distance > rounding_mm)
        return engine::unit(engine::minus(near.on_second, near.on_first));
    return engine::scaled(engine::overlap(one, other).direction, -1.0);
}

// The least of what a body's corners come to along one direction before and another then.
double least_of(const Both<ConvexBody>& body, const Both<Vector>& along) {
    double least = std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < body.a.corners.size(); ++i) {
        least = std::min(least, engine::dot(along.a, body.a.corners[i]) +
                                    engine::dot(along.b, body.b.corners[i]));
    }
    return least;
}

// The least of (1 - t)^2 a + 2 t (1 - t) b + t^2 c for t from 0 to 1.
double least_of_curve(double a, double b, double c) {
    const double bend = a + c - 2.0 * b;
    if (b >= std::min(a, c) || bend <= 0.0) return std::min(a, c);
    return (a * c - b * b) / bend;
}

// What parts them turns evenly from one direction to the other, as where a post leans with a wall.
// Along it, which is nowhere longer than 1, each corner of one stays behind each of the other: by a
// polynomial of the second degree, since the corners move evenly too. (Those of a post that turns
// lie off that by some thousandths of a millimetre, which is left out of account.)
bool parted_while_turning(const Both<ConvexBody>& one,
                          const Both<ConvexBody>& other,
                          const Both<Vector>& direction,
                          double apart) {
    const Vector back = engine::scaled(direction.a, -1.0);
    const Vector back_then = engine::scaled(direction.b, -1.0);
    const double before = room_along(one.a, other.a, direction.a);
    const double then = room_along(one.b, other.b, direction.b);
    const double between =
        (least_of(other, {direction.b, direction.a}) + least_of(one, {back_then, back})) / 2.0;
    return least_of_curve(before, between, then) >= apart - rounding_mm;
}

bool parted(const Both<ConvexBody>& one, const Both<ConvexBody>& other, double apart) {
    if (parted_across_axes({one.a.bounds, one.b.bounds}, {other.a.bounds, other.b.bounds}, apart))
        return true;
    const Vector before = direction_between(one.a, other.a);
    const Vector then = direction_between(one.b, other.b);
    return std::ranges::any_of(std::array{Both<Vector>{before, before}, Both<Vector>{then, then},
                                          Both<Vector>{before, then}},
                               [&](const Both<Vector>& direction) {
                                   return parted_while_turning(one, other, direction, apart);
                               });
}

bool have_as_many_corners(const std::vector<ConvexBody>& a, const std::vector<ConvexBody>& b) {
    return std::ranges::equal(a, b, [](const ConvexBody& p, const ConvexBody& q) {
        return p.corners.size() == q.corners.size();
    });
}

class Gap {
public:
    Gap(const BandLook& a, const BandLook& b, double reach) : a_{a}, b_{b}, reach_{reach} {}

    bool is_free_of_obstacles() const {
        for (Index obstacle = 0; obstacle < a_.obstacles.size(); ++obstacle) {
            for (Index thing = 0; thing < a_.things.size(); ++thing) {
                if (!is_free(obstacle, thing)) return false;
            }
        }
        return true;
    }

    bool are_frames_apart() const {
        for (Index one = 0; one < a_.frames.size(); ++one) {
            for (Index other = one + 1; other < a_.frames.size(); ++other) {
                if (!are_apart(one, other)) return false;
            }
        }
        return true;
    }

private:
    Both<Bounds> thing(Index number) const { return {a_.things[number], b_.things[number]}; }

    double margin(const BandLook& look, Index obstacle, Index thing) const {
        const auto found = look.margins.find({obstacle, thing});
        return found == look.margins.end() ? reach_ : found->second;
    }

    bool is_free(Index number, Index thing_number) const {
        const auto box = thing(thing_number);
        if (!is_there(box.a) && !is_there(box.b)) return true;
        if (!is_there(box.a) || !is_there(box.b)) return false;
        const auto& there = a_.obstacles[number];
        const auto& then = b_.obstacles[number];
        const double wanted = mm_of(std::max(there.wanted, then.wanted));
        if (parted_across_axes(box, {there.bounds, then.bounds}, wanted)) return true;
        const double left = margin(a_, number, thing_number);
        const double left_then = margin(b_, number, thing_number);
        if (left < -rounding_mm || left_then < -rounding_mm) return true;  // whatever the value
        const double way = way_of(box.a, box.b) + way_of(there.bounds, then.bounds);
        if (left + left_then >= way - rounding_mm) return true;
        const auto bodies = a_.bodies.find(thing_number);
        const auto bodies_then = b_.bodies.find(thing_number);
        if (bodies == a_.bodies.end() || bodies_then == b_.bodies.end()) return false;
        if (!have_as_many_corners(bodies->second, bodies_then->second)) return false;
        return there.scan
                   ? is_free_of_scan({there, then}, {bodies->second, bodies_then->second}, wanted)
                   : is_free_of_bodies({there, then}, {bodies->second, bodies_then->second},
                                       wanted);
    }

    static bool is_free_of_bodies(const Both<RoomObstacle>& obstacle,
                                  const Both<std::vector<ConvexBody>>& bodies,
                                  double wanted) {
        if (!have_as_many_corners(obstacle.a.bodies, obstacle.b.bodies)) return false;
        for (std::size_t i = 0; i < bodies.a.size(); ++i) {
            for (std::size_t k = 0; k < obstacle.a.bodies.size(); ++k) {
                if (!parted({bodies.a[i], bodies.b[i]},
                            {obstacle.a.bodies[k], obstacle.b.bodies[k]}, wanted))
                    return false;
            }
        }
        return true;
    }

    // The box that holds all that a body passes through.
    static bool is_free_of_scan(const Both<RoomObstacle>& obstacle,
                                const Both<std::vector<ConvexBody>>& bodies,
                                double wanted) {
        if (obstacle.a.scan != obstacle.b.scan || obstacle.a.scan_place != obstacle.b.scan_place)
            return false;
        std::vector<ConvexBody> passed;
        for (std::size_t i = 0; i < bodies.a.size(); ++i) {
            auto all = bodies.a[i].bounds;
            engine::put_in(all, bodies.b[i].bounds);
            passed.push_back(engine::convex_body(all.lo, all.hi));
        }
        const auto own = in_axes_of(obstacle.a.scan_place, passed);
        const double most = std::max(0.0, wanted - rounding_mm);
        const auto near = obstacle.a.scan->tree.nearest(own, most);
        return !near ||
               (near->distance <= 0.0 && wanted <= 0.0 && !is_crossed(*obstacle.a.scan, own));
    }

    std::vector<Index> of_frame(Index frame, const Both<Bounds>& near) const {
        std::vector<Index> all;
        for (Index i = 0; i < a_.things.size(); ++i) {
            if (a_.frame_of[i] != frame && b_.frame_of[i] != frame) continue;
            if (!is_there(a_.things[i]) || !is_there(b_.things[i]) ||
                !parted_across_axes(thing(i), near, a_.frame_gap))
                all.push_back(i);
        }
        return all;
    }

    bool are_apart(Index one, Index other) const {
        const Both<Bounds> first{a_.frames[one], b_.frames[one]};
        const Both<Bounds> second{a_.frames[other], b_.frames[other]};
        if (!is_there(first.a) || !is_there(second.a)) return true;
        if (parted_across_axes(first, second, a_.frame_gap)) return true;
        if (keep_their_distance(first, second)) return true;
        const auto things = of_frame(one, second);
        const auto others = of_frame(other, first);
        return std::ranges::all_of(things, [&](Index i) {
            return std::ranges::all_of(others, [&](Index k) { return are_things_apart(i, k); });
        });
    }

    // They move together, or not at all.
    static bool keep_their_distance(const Both<Bounds>& one, const Both<Bounds>& other) {
        const Vector way = engine::minus(one.b.lo, one.a.lo);
        for (const auto& it : {one, other}) {
            for (std::size_t k = 0; k < 3; ++k) {
                if (std::abs(it.b.lo[k] - it.a.lo[k] - way[k]) > rounding_mm ||
                    std::abs(it.b.hi[k] - it.a.hi[k] - way[k]) > rounding_mm)
                    return false;
            }
        }
        return true;
    }

    bool are_things_apart(Index i, Index k) const {
        const auto one = thing(i);
        const auto other = thing(k);
        if (!is_there(one.a) || !is_there(one.b) || !is_there(other.a) || !is_there(other.b))
            return false;
        if (parted_across_axes(one, other, a_.frame_gap)) return true;
        if (keep_their_distance(one, other)) return true;
        // In each other's place at both ends, although both fit: so whatever the value.
        if (engine::touches(one.a, other.a) && engine::touches(one.b, other.b)) return true;
        const double way = way_of(one.a, one.b) + way_of(other.a, other.b);
        const double left = std::sqrt(engine::squared_gap(one.a, other.a)) - a_.frame_gap;
        const double left_then = std::sqrt(engine::squared_gap(one.b, other.b)) - a_.frame_gap;
        return std::min(left, left_then) >= 0.0 && left + left_then >= way - rounding_mm;
    }

    const BandLook& a_;
    const BandLook& b_;
    double reach_;
};

}  // namespace

bool are_alike(const BandLook& a, const BandLook& b) {
    return a.things.size() == b.things.size() && a.frames.size() == b.frames.size() &&
           a.frame_of == b.frame_of &&
           std::ranges::equal(a.obstacles, b.obstacles, {}, &RoomObstacle::obstacle,
                              &RoomObstacle::obstacle);
}

bool is_surely_free(const BandLook& a, const BandLook& b, double reach_mm) {
    if (!are_alike(a, b)) return false;
    const Gap gap{a, b, reach_mm};
    return gap.is_free_of_obstacles() && gap.are_frames_apart();
}

}  // namespace model

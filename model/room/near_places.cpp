#include "engine/geometry/convex_distance.h"
#include "engine/geometry/convex_overlap.h"
#include "engine/geometry/vectors.h"
#include "model/room/clearance.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace model {
namespace {

using engine::Bounds;
using engine::ConvexBody;
using engine::Vector;

// What is nearer by no more than this is as near as it is wanted: the rounding of doubles.
constexpr double rounding_mm = 1e-6;

Bounds grown(Bounds bounds, double by) {
    for (std::size_t k = 0; k < 3; ++k) {
        bounds.lo[k] -= by;
        bounds.hi[k] += by;
    }
    return bounds;
}

Vector way(std::size_t index) {
    Vector direction{};
    direction[index / 2] = index % 2 == 0 ? -1.0 : 1.0;
    return direction;
}

Vector own_direction(const engine::Placement& place, const Vector& in_room) {
    return {engine::dot(place.x, in_room), engine::dot(place.y, in_room),
            engine::dot(place.z, in_room)};
}

// How far a group of bodies is to be moved along a direction until it is clear of another group. A
// move out of one body may lead into the next one, so it is repeated.
double shift_out(std::span<const ConvexBody> things,
                 std::span<const ConvexBody> others,
                 const Vector& direction) {
    double all = 0.0;
    constexpr int most_moves = 64;  // obstacles have fewer layers in a row
    for (int move = 0; move < most_moves; ++move) {
        double more = 0.0;
        for (const auto& thing : things) {
            const auto moved = engine::moved(thing, engine::scaled(direction, all));
            for (const auto& other : others) {
                if (!engine::touches(moved.bounds, other.bounds)) continue;
                more = std::max(more, engine::shift_to_clear(moved, other, direction));
            }
        }
        if (more <= rounding_mm) break;
        all += more;
    }
    return all;
}

// A triangle with next to no thickness.
ConvexBody thin_body(const engine::Triangle& corners) {
    const Vector normal = engine::unit(engine::cross(engine::minus(corners[1], corners[0]),
                                                     engine::minus(corners[2], corners[0])));
    constexpr double half = 0.0005;  // mm
    engine::Prism prism;
    for (const auto& corner : corners) {
        prism.near.push_back(engine::plus(corner, engine::scaled(normal, -half)));
        prism.far.push_back(engine::plus(corner, engine::scaled(normal, half)));
    }
    return engine::convex_body(prism);
}

bool has_area(const engine::Triangle& t) {
    const auto normal = engine::cross(engine::minus(t[1], t[0]), engine::minus(t[2], t[0]));
    return engine::dot(normal, normal) > 1e-12;
}

// The triangles that the bodies run into.
std::vector<ConvexBody> crossed_triangles(const engine::TriangleTree& tree,
                                          std::span<const ConvexBody> bodies) {
    std::vector<ConvexBody> crossed;
    constexpr std::size_t enough = 256;  // the depth is then told from these
    for (const auto& body : bodies) {
        tree.for_each_touching(body.bounds, [&](std::uint32_t, const engine::Triangle& corners) {
            if (crossed.size() >= enough || !has_area(corners)) return;
            if (engine::crosses(body, corners)) crossed.push_back(thin_body(corners));
        });
    }
    return crossed;
}

class Search {
public:
    Search(const Resolved& resolved, const Catalogue& catalogue, const LookRound& how)
        : bodies_{resolved, catalogue},
          things_{room_things(resolved, catalogue)},
          made_(things_.size()),
          is_near_(resolved.pieces.size()),
          how_{how} {
        for (const auto& thing : things_) {
            if (thing.fastener == no_index) continue;
            const Vector size = engine::minus(thing.bounds.hi, thing.bounds.lo);
            standing_ = std::max(standing_, engine::length_of(size));
        }
    }

    void look_round(const RoomObstacle& obstacle, std::vector<NearPlace>& places) {
        const double within = static_cast<double>(obstacle.wanted) / 1e6 + how_.reach;
        const Bounds around = grown(obstacle.bounds, within + standing_);
        const auto look = [&](std::size_t i, double as_far) {
            if (!engine::touches(around, things_[i].bounds)) return std::optional<NearPlace>{};
            return obstacle.scan ? near_scan(obstacle, i, as_far)
                                 : near_bodies(obstacle, i, as_far);
        };
        // A head or a tail stands on its piece, so that it is near only where that is nearly so.
        is_near_.assign(is_near_.size(), 0);
        for (std::size_t i = 0; i < things_.size(); ++i) {
            const bool is_piece = things_[i].fastener == no_index;
            if (!is_piece && is_near_[things_[i].piece] == 0) continue;
            auto place = look(i, is_piece ? within + standing_ : within);
            if (!place) continue;
            if (is_piece) is_near_[things_[i].piece] = 1;
            if (place->depth > 0.0 || place->distance <= within - rounding_mm)
                places.push_back(std::move(*place));
        }
    }

private:
    std::span<const ConvexBody> bodies_of(std::size_t thing) {
        auto& made = made_[thing];
        if (!made) made = bodies_.of(things_[thing]);
        return *made;
    }

    NearPlace place_of(const RoomObstacle& obstacle, std::size_t thing) const {
        return {.thing = things_[thing], .obstacle = obstacle.obstacle};
    }

    std::optional<NearPlace> near_bodies(const RoomObstacle& obstacle,
                                         std::size_t thing,
                                         double within) {
        const double apart = gap_of_bounds(obstacle, things_[thing].bounds);
        if (apart > within) return std::nullopt;
        NearPlace place = place_of(obstacle, thing);
        if (how_.reach > 0.0 && apart > static_cast<double>(obstacle.wanted) / 1e6) {
            place.distance = apart;  // no more is asked there
            return place;
        }
        double best = within - rounding_mm;
        bool found = false;
        bool shares = false;
        for (const auto& body : bodies_of(thing)) {
            const Bounds around = grown(body.bounds, std::max(best, 0.0));
            for (const auto& other : obstacle.bodies) {
                if (!engine::touches(around, other.bounds)) continue;
                const auto near = engine::nearest(body, other, std::max(best, 0.0));
                if (!near) continue;
                if (near->distance <= 0.0) {
                    shares = shares || engine::overlap(body, other).depth > rounding_mm;
                }
                if (near->distance > best) continue;
                best = near->distance;
                found = true;
                place.distance = near->distance;
                place.on_thing = near->on_first;
                place.on_obstacle = near->on_second;
            }
        }
        if (shares) set_depth(place, obstacle, bodies_of(thing), obstacle.bodies, {});
        if (!found && !shares) return std::nullopt;
        return place;
    }

    // No more than the distance of the two.
    static double gap_of_bounds(const RoomObstacle& obstacle, const Bounds& bounds) {
        double least = std::numeric_limits<double>::max();
        for (const auto& body : obstacle.bodies)
            least = std::min(least, engine::squared_gap(body.bounds, bounds));
        return std::sqrt(least);
    }

    std::optional<NearPlace> near_scan(const RoomObstacle& obstacle,
                                       std::size_t thing,
                                       double within) {
        const auto& place_in_room = obstacle.scan_place;
        std::vector<ConvexBody> bodies;
        for (const auto& body : bodies_of(thing)) bodies.push_back(in_scan(body, place_in_room));
        const auto& tree = obstacle.scan->tree;
        const double most = within - rounding_mm;
        const auto near = tree.nearest(bodies, std::max(most, 0.0));
        if (!near || (near->distance > most && near->distance > 0.0)) {
            return within_closed(obstacle, thing, bodies);
        }
        NearPlace place = place_of(obstacle, thing);
        place.distance = near->distance;
        place.on_thing = engine::point_in(place_in_room, near->on_body);
        place.on_obstacle = engine::point_in(place_in_room, near->on_mesh);
        if (near->distance <= 0.0) {
            const auto crossed = crossed_triangles(tree, bodies);
            set_depth(place, obstacle, bodies, crossed, obstacle.scan_place);
        }
        if (most < 0.0 && place.depth <= rounding_mm) return std::nullopt;
        return place;
    }

    // Of a scan that is closed: a thing wholly inside it comes near to no triangle.
    std::optional<NearPlace> within_closed(const RoomObstacle& obstacle,
                                           std::size_t thing,
                                           std::span<const ConvexBody> bodies) {
        if (!obstacle.scan->is_closed || bodies.empty()) return std::nullopt;
        Vector from = bodies.front().corners.front();
        const Vector at = from;
        const Vector direction{0.36, 0.48,
                               0.8};  // along no axis, so that it meets no edge by habit
        int walls = 0;
        while (const auto hit = obstacle.scan->tree.first_on_ray(from, direction)) {
            ++walls;
            from = engine::plus(hit->point, engine::scaled(direction, 1e-6));
        }
        if (walls % 2 == 0) return std::nullopt;
        NearPlace place = place_of(obstacle, thing);
        const auto& outside = obstacle.scan->tree.bounds();
        place.on_thing = engine::point_in(obstacle.scan_place, at);
        place.on_obstacle = place.on_thing;
        place.depth = std::numeric_limits<double>::max();
        for (std::size_t i = 0; i < 6; ++i) {
            const std::size_t axis = i / 2;
            const double out =
                i % 2 == 0 ? at[axis] - outside.lo[axis] : outside.hi[axis] - at[axis];
            if (out >= place.depth) continue;
            place.depth = out;
            place.way_out = engine::direction_in(obstacle.scan_place, way(i));
        }
        return place;
    }

    static ConvexBody in_scan(const ConvexBody& body, const engine::Placement& place) {
        const Vector back = engine::scaled(own_direction(place, place.origin), -1.0);
        const engine::Placement own{.origin = back,
                                    .x = own_direction(place, {1.0, 0.0, 0.0}),
                                    .y = own_direction(place, {0.0, 1.0, 0.0}),
                                    .z = own_direction(place, {0.0, 0.0, 1.0})};
        return engine::moved(body, own);
    }

    void set_depth(NearPlace& place,
                   const RoomObstacle& obstacle,
                   std::span<const ConvexBody> things,
                   std::span<const ConvexBody> others,
                   const engine::Placement& axes) const {
        place.distance = 0.0;
        place.depth = 1.0;
        if (!how_.with_depth) return;
        double least = std::numeric_limits<double>::max();
        for (std::size_t i = 0; i < 6; ++i) {
            if (!obstacle.ways[i]) continue;
            const double shift = shift_out(things, others, own_direction(axes, way(i)));
            if (shift >= least) continue;
            least = shift;
            place.way_out = way(i);
        }
        place.depth = least;
    }

    ThingBodies bodies_;
    std::vector<RoomThing> things_;
    std::vector<std::optional<std::vector<ConvexBody>>> made_;
    std::vector<char> is_near_;  // by piece, to the obstacle at hand
    double standing_ = 0.0;      // mm, further than this no head or tail stands out from its piece
    LookRound how_;
};

}  // namespace

std::vector<NearPlace> near_places(const Resolved& resolved,
                                   const Catalogue& catalogue,
                                   std::span<const RoomObstacle> obstacles,
                                   const LookRound& how) {
    std::vector<NearPlace> places;
    if (obstacles.empty()) return places;
    Search search{resolved, catalogue, how};
    for (const auto& obstacle : obstacles) search.look_round(obstacle, places);
    return places;
}

}  // namespace model

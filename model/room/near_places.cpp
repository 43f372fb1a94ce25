#include "engine/geometry/convex_distance.h"
#include "engine/geometry/convex_overlap.h"
#include "engine/geometry/vectors.h"
#include "model/room/clearance.h"
#include "model/room/rounding.h"
#include "model/room/scan_side.h"
#include "model/room/way_out.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <map>
#include <optional>

namespace model {
namespace {

using engine::Bounds;
using engine::ConvexBody;
using engine::Vector;

Bounds grown(Bounds bounds, double by) {
    for (std::size_t k = 0; k < 3; ++k) {
        bounds.lo[k] -= by;
        bounds.hi[k] += by;
    }
    return bounds;
}

class Search {
public:
    Search(const Resolved& resolved, const Catalogue& catalogue, const LookRound& how)
        : resolved_{resolved},
          bodies_{resolved, catalogue},
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
        // A head or a tail stands on its piece, so that it is near only where that is nearly so.
        is_near_.assign(is_near_.size(), 0);
        entering_.clear();
        for (std::size_t i = 0; i < things_.size(); ++i) {
            const bool is_piece = things_[i].fastener == no_index;
            if (!is_piece && is_near_[things_[i].piece] == 0) continue;
            if (!engine::touches(around, things_[i].bounds)) continue;
            const double as_far = is_piece ? within + standing_ : within;
            auto place =
                obstacle.scan ? near_scan(obstacle, i, as_far) : near_bodies(obstacle, i, as_far);
            if (!place) continue;
            if (is_piece) is_near_[things_[i].piece] = 1;
            if (place->depth <= 0.0 && place->distance > within - rounding_mm) continue;
            if (place->depth > 0.0) entering_.push_back({places.size(), i});
            places.push_back(std::move(*place));
        }
        if (how_.with_depth && !entering_.empty()) set_depths(obstacle, places);
    }

private:
    struct Entering {
        std::size_t place = 0;
        std::size_t thing = 0;
    };

    std::span<const ConvexBody> bodies_of(std::size_t thing) {
        auto& made = made_[thing];
        if (!made) made = bodies_.of(things_[thing]);
        return *made;
    }

    // As far as the boxes round the two tell.
    NearPlace entering_place(const RoomObstacle& obstacle, NearPlace place) const {
        const auto out = way_out_of_bounds(obstacle, place.thing.bounds);
        place.distance = 0.0;
        place.depth = out.depth;
        place.way_out = direction_of(out.way);
        return place;
    }

    std::optional<NearPlace> near_bodies(const RoomObstacle& obstacle,
                                         std::size_t thing,
                                         double within) {
        const double apart = gap_of_bounds(obstacle, things_[thing].bounds);
        if (apart > within) return std::nullopt;
        NearPlace place{.thing = things_[thing], .obstacle = obstacle.obstacle};
        if (how_.boxes_beyond && apart > static_cast<double>(obstacle.wanted) / 1e6) {
            place.distance = apart;  // no more is asked there
            return place;
        }
        double best = within - rounding_mm;
        bool found = false;
        for (const auto& body : bodies_of(thing)) {
            const Bounds around = grown(body.bounds, std::max(best, 0.0));
            for (const auto& other : obstacle.bodies) {
                if (!engine::touches(around, other.bounds)) continue;
                const auto near = engine::nearest(body, other, std::max(best, 0.0));
                if (!near) continue;
                const bool enters =
                    near->distance <= 0.0 && engine::is_deeper(body, other, rounding_mm);
                if (near->distance > best && !enters) continue;
                best = near->distance;
                found = true;
                place.distance = near->distance;
                place.on_thing = near->on_first;
                place.on_obstacle = near->on_second;
                if (enters) return entering_place(obstacle, std::move(place));
            }
        }
        if (!found) return std::nullopt;
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
        const auto& scan = *obstacle.scan;
        const auto bodies = in_axes_of(obstacle.scan_place, bodies_of(thing));
        const double most = within - rounding_mm;
        const auto near = scan.tree.nearest(bodies, std::max(most, 0.0));
        NearPlace place{.thing = things_[thing], .obstacle = obstacle.obstacle};
        if (!near || (near->distance > most && near->distance > 0.0)) {
            if (bodies.empty() || !is_inside(scan, bodies.front().around.centre))
                return std::nullopt;
            place.on_thing = engine::point_in(obstacle.scan_place, bodies.front().around.centre);
            place.on_obstacle = place.on_thing;
            return entering_place(obstacle, std::move(place));
        }
        place.distance = near->distance;
        place.on_thing = engine::point_in(obstacle.scan_place, near->on_body);
        place.on_obstacle = engine::point_in(obstacle.scan_place, near->on_mesh);
        if (near->distance <= 0.0 && is_crossed(scan, bodies))
            return entering_place(obstacle, std::move(place));
        if (most < 0.0) return std::nullopt;
        return place;
    }

    std::vector<ConvexBody> bodies_for(const RoomObstacle& obstacle, std::size_t thing) {
        const auto bodies = bodies_of(thing);
        if (obstacle.scan) return in_axes_of(obstacle.scan_place, bodies);
        return {bodies.begin(), bodies.end()};
    }

    // What may be the worst of its frame gets its least depth; the others keep one that is no less
    // than theirs and no more than the worst.
    void set_depths(const RoomObstacle& obstacle, std::vector<NearPlace>& places) {
        std::ranges::stable_sort(entering_, std::ranges::greater{},
                                 [&](const Entering& one) { return places[one.place].depth; });
        const WaysOut ways{obstacle};
        std::map<Index, WayOut> worst;  // by frame
        for (const auto& one : entering_) {
            auto& place = places[one.place];
            auto& kept = worst[resolved_.pieces[place.thing.piece].frame];
            if (place.depth <= kept.depth) continue;
            const auto bounds = way_out_of_bounds(obstacle, place.thing.bounds);
            const auto out = ways.shortest(bodies_for(obstacle, one.thing), bounds,
                                           kept.depth > 0.0 ? kept.way : bounds.way, kept.depth);
            place.depth = out.depth;
            place.way_out = direction_of(out.way);
            if (out.depth > kept.depth) kept = out;
        }
    }

    const Resolved& resolved_;
    ThingBodies bodies_;
    std::vector<RoomThing> things_;
    std::vector<std::optional<std::vector<ConvexBody>>> made_;
    std::vector<char> is_near_;       // by piece, to the obstacle at hand
    std::vector<Entering> entering_;  // the obstacle at hand
    double standing_ = 0.0;  // mm, further than this no head or tail stands out from its piece
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

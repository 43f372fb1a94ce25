#include "model/room/frame_distances.h"

#include "engine/geometry/convex_distance.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

namespace model {
namespace {

struct Group {
    std::vector<RoomThing> things;
    engine::Bounds bounds;
};

// Two things whose bounds are so near; the nearest are looked at first.
struct Candidate {
    double squared = 0.0;
    const RoomThing* one = nullptr;
    const RoomThing* other = nullptr;
};

std::vector<Group> groups_of(const Resolved& resolved, const Catalogue& catalogue) {
    std::vector<Group> groups(resolved.frames.size());
    for (auto& thing : room_things(resolved, catalogue)) {
        auto& group = groups[resolved.pieces[thing.piece].frame];
        engine::put_in(group.bounds, thing.bounds);
        group.things.push_back(std::move(thing));
    }
    return groups;
}

std::vector<Candidate> candidates(const Group& a, const Group& b, double reach_mm) {
    std::vector<Candidate> found;
    const double most = reach_mm * reach_mm;
    for (const auto& one : a.things) {
        if (engine::squared_gap(one.bounds, b.bounds) > most) continue;
        for (const auto& other : b.things) {
            const double squared = engine::squared_gap(one.bounds, other.bounds);
            if (squared <= most) found.push_back({squared, &one, &other});
        }
    }
    std::ranges::stable_sort(found, {}, &Candidate::squared);
    return found;
}

class Distances {
public:
    Distances(const Resolved& resolved, const Catalogue& catalogue)
        : bodies_{resolved, catalogue} {}

    std::optional<FrameDistance> between(const Group& a, const Group& b, double reach_mm) {
        std::optional<FrameDistance> best;
        double reach = reach_mm;
        for (const auto& candidate : candidates(a, b, reach_mm)) {
            if (std::sqrt(candidate.squared) > reach || (best && reach <= 0.0)) break;
            for (const auto& p : bodies_of(*candidate.one)) {
                for (const auto& q : bodies_of(*candidate.other)) {
                    const auto near = engine::nearest(p, q, reach);
                    if (!near || (best && near->distance >= best->distance)) continue;
                    best = FrameDistance{{*candidate.one, *candidate.other},
                                         {near->on_first, near->on_second},
                                         near->distance};
                    reach = near->distance;
                }
            }
        }
        return best;
    }

private:
    const std::vector<engine::ConvexBody>& bodies_of(const RoomThing& thing) {
        const auto [at, is_new] = known_.try_emplace(&thing);
        if (is_new) at->second = bodies_.of(thing);
        return at->second;
    }

    ThingBodies bodies_;
    std::map<const RoomThing*, std::vector<engine::ConvexBody>> known_;
};

}  // namespace

std::vector<FrameDistance> frame_distances(const Resolved& resolved,
                                           const Catalogue& catalogue,
                                           double reach_mm) {
    std::vector<FrameDistance> found;
    if (resolved.frames.size() < 2) return found;
    const auto groups = groups_of(resolved, catalogue);
    Distances distances{resolved, catalogue};
    for (std::size_t a = 0; a < groups.size(); ++a) {
        for (std::size_t b = a + 1; b < groups.size(); ++b) {
            if (groups[a].things.empty() || groups[b].things.empty()) continue;
            if (auto one = distances.between(groups[a], groups[b], reach_mm))
                found.push_back(std::move(*one));
        }
    }
    return found;
}

}  // namespace model

#include "engine/geometry/convex_distance.h"
#include "engine/geometry/convex_overlap.h"
#include "model/resolve/piece_subject.h"
#include "model/room/clearance.h"
#include "model/room/rounding.h"
#include "model/room/shapes.h"

#include <algorithm>
#include <array>
#include <limits>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <utility>

namespace model {
namespace {

struct Near {
    double distance = 0.0;
    double depth = 0.0;  // of what enters, where a fastener does
};

bool is_worse(const Near& a, const Near& b) {
    return a.depth != b.depth ? a.depth > b.depth : a.distance < b.distance;
}

// What two findings of the same pair of frames have alike.
using PairKey = std::array<std::pair<SubjectKind, std::string>, 2>;

PairKey key_of(const Subject& one, const Subject& other) {
    return {std::pair{one.kind, one.name}, std::pair{other.kind, other.name}};
}

// A thing with its bodies, which are made when they are asked for.
struct Solid {
    RoomThing thing;
    std::optional<std::vector<engine::ConvexBody>> bodies;
};

class Frames {
public:
    Frames(const Project& project, const Catalogue& catalogue, const Resolved& resolved)
        : project_{project},
          resolved_{resolved},
          bodies_{resolved, catalogue},
          gap_{mm_of(resolved.shop.frame_gap)},
          by_frame_(resolved.frames.size()),
          bounds_(resolved.frames.size()) {
        for (auto& thing : room_things(resolved, catalogue)) {
            const Index frame = resolved.pieces[thing.piece].frame;
            engine::put_in(bounds_[frame], thing.bounds);
            by_frame_[frame].push_back({std::move(thing), std::nullopt});
        }
    }

    void report(std::vector<Finding>& findings) {
        for (Index a = 0; a < by_frame_.size(); ++a) {
            for (Index b = a + 1; b < by_frame_.size(); ++b) {
                if (is_near(bounds_[a], bounds_[b])) compare(a, b, findings);
            }
        }
    }

private:
    bool is_near(const engine::Bounds& a, const engine::Bounds& b) const {
        return engine::squared_gap(a, b) <= gap_ * gap_;
    }

    std::vector<Solid*> near_to(Index frame, const engine::Bounds& other) {
        std::vector<Solid*> near;
        for (auto& solid : by_frame_[frame]) {
            if (is_near(solid.thing.bounds, other)) near.push_back(&solid);
        }
        return near;
    }

    std::span<const engine::ConvexBody> bodies_of(Solid& solid) const {
        if (!solid.bodies) solid.bodies = bodies_.of(solid.thing);
        return *solid.bodies;
    }

    Subject subject_of(const RoomThing& thing) const {
        const auto& piece = resolved_.pieces[thing.piece];
        return piece_subject(project_.frames[piece.frame], piece);
    }

    void compare(Index a, Index b, std::vector<Finding>& findings) {
        const auto ones = near_to(a, bounds_[b]);
        const auto others = near_to(b, bounds_[a]);
        struct Pair {
            Near near;
            Subject one;
            Subject other;
        };
        std::map<PairKey, Pair> worst;
        for (auto* one : ones) {
            for (auto* other : others) {
                if (!is_near(one->thing.bounds, other->thing.bounds)) continue;
                const auto near = compared(*one, *other);
                if (!near) continue;
                Pair pair{*near, subject_of(one->thing), subject_of(other->thing)};
                auto& kept = worst[key_of(pair.one, pair.other)];
                if (kept.one.frame.empty() || is_worse(pair.near, kept.near))
                    kept = std::move(pair);
            }
        }
        for (auto& [key, pair] : worst)
            findings.push_back(finding(pair.near, std::move(pair.one), std::move(pair.other)));
    }

    std::optional<Near> compared(Solid& one, Solid& other) const {
        const bool with_fastener =
            one.thing.fastener != no_index || other.thing.fastener != no_index;
        if (!with_fastener && gap_ <= 0.0) return std::nullopt;
        Near near{.distance = std::numeric_limits<double>::max()};
        for (const auto& p : bodies_of(one)) {
            for (const auto& q : bodies_of(other)) {
                const auto found = engine::nearest(p, q, gap_);
                if (!found) continue;
                near.distance = std::min(near.distance, found->distance);
                if (found->distance <= 0.0) {
                    const double depth = engine::overlap(p, q).depth;
                    if (depth > rounding_mm && !with_fastener) return std::nullopt;
                    if (depth > rounding_mm) near.depth = std::max(near.depth, depth);
                }
            }
        }
        if (near.depth > 0.0 || near.distance < gap_ - rounding_mm) return near;
        return std::nullopt;
    }

    Finding finding(const Near& near, Subject one, Subject other) const {
        const Nm amount = static_cast<Nm>((near.depth > 0.0 ? near.depth : near.distance) * 1e6);
        if (near.depth > 0.0) {
            return {.code = "fastener_enters",
                    .severity = Severity::error,
                    .concerns = {std::move(one), std::move(other)},
                    .numbers = {{"depth", Length::from_nm(amount)}},
                    .what = "a head or a tail on one of them stands " +
                            depth_in_words(Length::from_nm(amount), project_.shown) +
                            " deep in the other, which is of another frame",
                    .mend =
                        "move the frames apart by as much, or set the fastener from the other "
                        "side"};
        }
        return {.code = "frame_gap",
                .severity = Severity::warning,
                .concerns = {std::move(one), std::move(other)},
                .numbers = {{"distance", Length::from_nm(amount)},
                            {"wanted", Length::from_nm(resolved_.shop.frame_gap)}},
                .what = "these two of different frames " +
                        (near.distance > rounding_mm
                             ? "are " + distance_in_words(near.distance, project_.shown) + " apart"
                             : std::string("touch")) +
                        "; " +
                        length_in_words(Length::from_nm(resolved_.shop.frame_gap), project_.shown) +
                        " is what frames keep",
                .mend = "move one of the frames, or let frames stand closer"};
    }

    const Project& project_;
    const Resolved& resolved_;
    ThingBodies bodies_;
    double gap_;
    std::vector<std::vector<Solid>> by_frame_;
    std::vector<engine::Bounds> bounds_;
};

}  // namespace

void report_frame_gaps(const Project& project,
                       const Catalogue& catalogue,
                       const Resolved& resolved,
                       std::vector<Finding>& findings) {
    if (resolved.frames.size() < 2) return;
    Frames(project, catalogue, resolved).report(findings);
}

}  // namespace model

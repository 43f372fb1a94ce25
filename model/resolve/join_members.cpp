#include "model/resolve/join_members.h"

#include "model/resolve/choose_recipes.h"
#include "model/resolve/rank.h"
#include "model/resolve/set_in.h"
#include "model/resolve/trim.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <set>
#include <utility>

namespace model {
namespace {

// Each round makes one joint at least otherwise than it was asked for. What a fourth one would cure
// is rare, and told as an error.
constexpr int most_rounds = 4;

FrameSkeleton skeleton_of(const PartRoom& room,
                          Index index,
                          std::vector<Bar> bars,
                          JointOverrides& overrides,
                          const std::vector<NoRoom>& no_room,
                          std::vector<Finding>& findings) {
    const Frame& frame = room.project.frames[index];
    FrameSkeleton skeleton;
    skeleton.frame = index;
    skeleton.bars = std::move(bars);
    rank_bars(skeleton, frame, findings);
    choose_recipes(skeleton, room, overrides, no_room, findings);
    // Ends: each round turns one meeting at least into a staggered lap.
    do {
        set_in_bars(skeleton);
    } while (lap_what_is_not_in_one_layer(skeleton, frame, overrides, findings));
    cut_ends(skeleton, room.shop.end_gap);
    trim_bars(skeleton, frame, room.shop.end_gap, findings);
    return skeleton;
}

}  // namespace

JoinedMembers join_members(const PartRoom& room,
                           Index frame,
                           const std::vector<Bar>& bars,
                           JointOverrides& overrides,
                           std::vector<Outline>& outlines,
                           std::vector<Finding>& findings) {
    const std::size_t first_finding = findings.size();
    const std::size_t first_outline = outlines.size();
    std::vector<NoRoom> made_otherwise;
    std::vector<NoRoom> left;
    std::set<std::array<Index, 2>> known;
    JoinedMembers joined;
    for (int round = 1;; ++round) {
        findings.resize(first_finding);
        outlines.resize(first_outline);
        joined.skeleton = skeleton_of(room, frame, bars, overrides, made_otherwise, findings);
        joined.laps = laps_of(joined.skeleton);
        left = add_parts(room, overrides, joined.skeleton, outlines, joined.laps);
        std::vector<NoRoom> fresh;
        std::ranges::copy_if(left, std::back_inserter(fresh), [&](const NoRoom& one) {
            return one.can_be_made_otherwise() && known.insert({one.upper, one.lower}).second;
        });
        if (fresh.empty() || round == most_rounds) break;
        made_otherwise.insert(made_otherwise.end(), fresh.begin(), fresh.end());
    }
    report_no_room(room.project.frames[frame], joined.skeleton, made_otherwise, left, findings);
    return joined;
}

}  // namespace model

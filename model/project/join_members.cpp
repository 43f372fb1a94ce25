#include "model/project/join_members.h"

#include "model/project/free_name.h"
#include "model/project/named_list.h"

#include <algorithm>
#include <utility>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

// In the order of their run.
struct Pair {
    const Member& first;
    const Member& second;
};

// What keeps them from being one, as the end of "they differ in"; empty: nothing.
std::string difference(const Pair& pair) {
    const auto& [a, b] = pair;
    if (a.run != b.run) return "the way they run";
    if (a.on != b.on) return "the planes they lie on";
    if (a.stock != b.stock) return "stock";
    if (a.legs != b.legs || a.turned != b.turned) return "the way their legs lie";
    if (a.seat != b.seat) return "seat";
    if (a.rank != b.rank) return "rank";
    return {};
}

bool is_nothing(const Formula& allowance, const PlanePlaces& places) {
    const auto length = places.length(allowance, {});
    return length && *length == 0;
}

bool has_bare_ends(const Pair& pair, const PlanePlaces& places) {
    return is_nothing(pair.first.allowance_to, places) &&
           is_nothing(pair.second.allowance_from, places) && !pair.first.foot_to &&
           !pair.second.foot_from;
}

bool do_meet(const Member& first, const Member& second, const PlanePlaces& places) {
    if (first.run != second.run) return false;
    if (first.to == second.from) return true;
    const auto end = places.known(first.to, first.run);
    return end && end == places.known(second.from, second.run);
}

std::string joined_name(const Frame& frame, const Pair& pair) {
    const auto first = numbered(pair.first.name);
    const auto second = numbered(pair.second.name);
    const bool is_split = first && second && first->stem == second->stem &&
                          first->number + 1 == second->number && !has_bar(frame, first->stem);
    return is_split ? first->stem : pair.first.name;
}

Member joined(const Frame& frame, const Pair& pair) {
    Member one = pair.first;
    one.name = joined_name(frame, pair);
    one.to = pair.second.to;
    one.allowance_to = pair.second.allowance_to;
    one.foot_to = pair.second.foot_to;
    if (one.note.empty()) {
        one.note = pair.second.note;
    } else if (!pair.second.note.empty() && pair.second.note != one.note) {
        one.note += "; " + pair.second.note;
    }
    return one;
}

// Where a place is not known the names alone tell.
bool runs_forward(const Member& member, const PlanePlaces& places) {
    const auto from = places.known(member.from, member.run);
    const auto to = places.known(member.to, member.run);
    return from && to ? *from < *to : member.from != member.to;
}

bool is_of_same_two(const JointOverride& a, const JointOverride& b) {
    return a.members == b.members || a.members == std::array{b.members[1], b.members[0]};
}

// The overrides as those of the one; that between the two falls away.
engine::Result<std::vector<JointOverride>> joined_joints(const Frame& frame,
                                                         const Pair& pair,
                                                         const std::string& name) {
    const auto is_part = [&](const std::string& bar) {
        return bar == pair.first.name || bar == pair.second.name;
    };
    std::vector<JointOverride> joints;
    for (JointOverride joint : frame.joints) {
        const std::array before = joint.members;
        if (is_part(before[0]) && is_part(before[1])) continue;
        const bool is_theirs = is_part(before[0]) || is_part(before[1]);
        for (std::string& bar : joint.members) {
            if (is_part(bar)) bar = name;
        }
        const auto same = std::ranges::find_if(
            joints, [&](const JointOverride& other) { return is_of_same_two(other, joint); });
        if (!is_theirs || same == joints.end()) {
            joints.push_back(std::move(joint));
            continue;
        }
        JointOverride alike = joint;
        alike.members = same->members;
        if (alike == *same) continue;
        return Error{ErrorCode::invalid_value,
                     inside(described(frame), "joint " + before[0] + " + " + before[1]),
                     "it is not joined as the other part is; make the two alike, or return one to "
                     "the rule first"};
    }
    return joints;
}

}  // namespace

Changed join_members(Frame& frame,
                     const std::array<std::string, 2>& names,
                     const PlanePlaces& places,
                     const std::string& name) {
    auto first = find_named(frame.members, names[0]);
    auto second = find_named(frame.members, names[1]);
    const std::string where = inside(described(frame), "members " + names[0] + " and " + names[1]);
    const auto refuse = [&](const std::string& why) {
        return Error{ErrorCode::invalid_value, where, why};
    };
    if (first == second) return refuse("choose two different ones");
    if (!do_meet(*first, *second, places)) std::swap(first, second);
    const Pair pair{*first, *second};
    if (const auto what = difference(pair); !what.empty()) {
        return refuse("they differ in " + what + "; make them alike first");
    }
    if (!do_meet(pair.first, pair.second, places)) {
        return refuse("neither ends at the plane where the other begins; let them meet first");
    }
    if (!has_bare_ends(pair, places)) {
        return refuse("an end where they meet is held back or has a foot; take that away first");
    }
    Member one = joined(frame, pair);
    if (!name.empty()) one.name = name;
    if (!runs_forward(one, places)) {
        return refuse("the one would run from \"" + one.from + "\" to \"" + one.to +
                      "\"; turn the one whose planes are in the wrong order end for end first");
    }
    auto joints = joined_joints(frame, pair, one.name);
    if (!joints) return joints.error();
    frame.joints = *std::move(joints);
    *first = one;
    frame.members.erase(second);
    return Done{};
}

}  // namespace model

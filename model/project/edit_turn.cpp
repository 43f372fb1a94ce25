// Edits that turn members where they are.
#include "model/project/change.h"
#include "model/project/in_frame.h"
#include "model/project/opposite.h"
#include "model/project/plane_places.h"

#include <set>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

bool has_flipped_leg(Member& member, Axis along) {
    if (member.run == along) return false;
    Sense& leg = member.legs[across(member.run)[0] == along ? 0 : 1];
    leg = opposite(leg);
    return true;
}

void swap_ends(Member& member) {
    std::swap(member.allowance_from, member.allowance_to);
    std::swap(member.foot_from, member.foot_to);
}

bool has_planes_in_wrong_order(const Member& member, const PlanePlaces& places) {
    const auto from = places.known(member.from, member.run);
    const auto to = places.known(member.to, member.run);
    return from && to && *from > *to;
}

bool has_ends_alike(const Member& member) {
    return member.allowance_from == member.allowance_to && member.foot_from == member.foot_to;
}

}  // namespace

Changed change(Project& project, const FlipLegs& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        bool has_flipped = false;
        for (const auto& name : std::set(edit.members.begin(), edit.members.end())) {
            const auto member = find_named(frame.members, name);
            if (member == frame.members.end()) return no_such<Member>(described(frame), name);
            if (has_flipped_leg(*member, edit.along)) has_flipped = true;
        }
        if (has_flipped) return Done{};
        const std::string letter(1, "xyz"[index_of(edit.along)]);
        return Error{ErrorCode::invalid_value, described(frame),
                     "none of the members chosen has a leg along " + letter +
                         "; choose members that run along another axis"};
    });
}

Changed change(Project& project, const TurnEndForEnd& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        const auto member = find_named(frame.members, edit.member);
        if (member == frame.members.end()) return no_such<Member>(described(frame), edit.member);
        if (has_planes_in_wrong_order(*member, PlanePlaces(project, frame))) {
            std::swap(member->from, member->to);
        } else if (has_ends_alike(*member)) {
            return Error{ErrorCode::invalid_value, inside(described(frame), described(*member)),
                         "both its ends are stated alike, so that nothing would change; hold one "
                         "end back or give it a foot first"};
        }
        swap_ends(*member);
        return Done{};
    });
}

}  // namespace model

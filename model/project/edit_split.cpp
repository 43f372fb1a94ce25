// Edits that make two members of one, and one of two.
#include "model/project/change.h"
#include "model/project/free_name.h"
#include "model/project/in_frame.h"
#include "model/project/join_members.h"
#include "model/project/plane_places.h"

#include <cmath>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

std::array<Member, 2> parts_of(const Frame& frame, const Member& whole, const std::string& plane) {
    int number = 1;
    const auto is_taken = [&](int n) { return has_bar(frame, with_number(whole.name, n)); };
    while (is_taken(number) || is_taken(number + 1)) ++number;
    std::array<Member, 2> parts{whole, whole};
    parts[0].name = with_number(whole.name, number);
    parts[0].to = parts[1].from = plane;
    parts[0].allowance_to = parts[1].allowance_from = "0";
    parts[0].foot_to = parts[1].foot_from = false;
    parts[1].name = with_number(whole.name, number + 1);
    return parts;
}

// Where along the member a bar between nodes of a face that it lies in meets it.
template <class Bar>
std::optional<Nm> place_met(const Bar& bar, const Member& whole, const PlanePlaces& places) {
    const auto face = places.axis_of(bar.face);
    if (!face || *face == whole.run) return std::nullopt;
    const auto sides = across(whole.run);
    const Axis rising = sides[0] == *face ? sides[1] : sides[0];
    Bar begin = bar;
    Bar end = bar;
    begin.to = begin.from;
    end.from = end.to;
    const auto level = reach(whole, places, rising);
    const auto low = reach(begin, places, rising);
    const auto high = reach(end, places, rising);
    const auto from = reach(begin, places, whole.run);
    const auto to = reach(end, places, whole.run);
    if (!level || !low || !high || !from || !to || *low == *high) return std::nullopt;
    const double part =
        static_cast<double>((*level)[0] - (*low)[0]) / static_cast<double>((*high)[0] - (*low)[0]);
    return (*from)[0] + std::llround(part * static_cast<double>((*to)[0] - (*from)[0]));
}

// From where to where along the member another bar may meet it.
std::optional<Reach> reach_met(const Frame& frame,
                               const std::string& bar,
                               const Member& whole,
                               const PlanePlaces& places) {
    std::optional<Nm> at;
    for (const Diagonal& it : frame.diagonals) {
        if (it.name == bar) at = place_met(it, whole, places);
    }
    for (const Leaning& it : frame.leaning) {
        if (it.name == bar) at = place_met(it, whole, places);
    }
    if (at) return Reach{*at, *at};
    return reach_of_bar(frame, bar, places, whole.run);
}

// Which of the parts an override with another bar is for: those where it meets. Where that cannot
// be told it is kept for both.
std::array<bool, 2> parts_reached(const std::optional<Reach>& other, Nm seam) {
    if (!other) return {true, true};
    const bool is_at_seam = (*other)[0] == seam && (*other)[1] == seam;
    return {is_at_seam || (*other)[0] < seam, is_at_seam || (*other)[1] > seam};
}

std::vector<JointOverride> parted_joints(const Frame& frame,
                                         const Member& whole,
                                         const std::array<Member, 2>& parts,
                                         const PlanePlaces& places,
                                         Nm seam) {
    std::vector<JointOverride> joints;
    for (const JointOverride& joint : frame.joints) {
        const std::size_t i = joint.members[0] == whole.name ? 0 : 1;
        if (joint.members[i] != whole.name) {
            joints.push_back(joint);
            continue;
        }
        const auto other = reach_met(frame, joint.members[1 - i], whole, places);
        const auto reached = parts_reached(other, seam);
        for (std::size_t k = 0; k < 2; ++k) {
            if (!reached[k]) continue;
            joints.push_back(joint);
            joints.back().members[i] = parts[k].name;
        }
    }
    return joints;
}

}  // namespace

Changed change(Project& project, const SplitMember& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        const auto whole = find_named(frame.members, edit.member);
        if (whole == frame.members.end()) return no_such<Member>(described(frame), edit.member);
        const std::string where = inside(described(frame), described(*whole));
        const PlanePlaces places(project, frame);
        const auto from = places.at(whole->from, whole->run, where);
        const auto to = places.at(whole->to, whole->run, where);
        const auto seam = places.at(edit.plane, whole->run, where);
        if (!from) return from.error();
        if (!to) return to.error();
        if (!seam) return seam.error();
        if (*seam <= *from || *seam >= *to) {
            return Error{ErrorCode::invalid_value, where,
                         "the plane \"" + edit.plane + "\" does not lie between its ends; choose " +
                             "one between \"" + whole->from + "\" and \"" + whole->to + "\""};
        }
        const auto parts = parts_of(frame, *whole, edit.plane);
        frame.joints = parted_joints(frame, *whole, parts, places, *seam);
        *whole = parts[0];
        frame.members.insert(whole + 1, parts[1]);
        return Done{};
    });
}

Changed change(Project& project, const JoinMembers& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        for (const std::string& name : edit.members) {
            if (find_named(frame.members, name) == frame.members.end()) {
                return no_such<Member>(described(frame), name);
            }
        }
        return join_members(frame, edit.members, PlanePlaces(project, frame));
    });
}

}  // namespace model

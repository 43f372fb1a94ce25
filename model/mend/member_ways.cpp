// What may be tried at members: running on, turning a leg, another rank, joining an end to what
// stands near it, taking out.
#include "model/mend/ways.h"
#include "model/resolve/recipe.h"

#include <algorithm>
#include <string>
#include <utility>

namespace model {
namespace {

constexpr const char* axis_letters = "xyz";

struct Named {
    std::string frame;
    const Member* member = nullptr;
};

std::vector<Named> members_of(const Case& of) {
    std::vector<Named> found;
    for (const auto& subject : of.finding.concerns) {
        const auto* frame = frame_named(of, subject.frame);
        if (subject.kind != SubjectKind::member || frame == nullptr) continue;
        if (const auto* member = named(frame->members, subject.name))
            found.push_back({subject.frame, member});
    }
    return found;
}

std::optional<Index> index_of_member(const Frame& frame, const std::string& name) {
    const auto at = std::ranges::find(frame.members, name, &Member::name);
    if (at == frame.members.end()) return std::nullopt;
    return static_cast<Index>(at - frame.members.begin());
}

// How wide its legs are.
std::optional<engine::Length> width_of(const Case& of, const Member& member) {
    const auto* stock = named(of.project().stock, member.stock);
    const auto* section = stock == nullptr ? nullptr : find_section(of.catalogue(), stock->section);
    if (section == nullptr) return std::nullopt;
    return std::max(section->a, section->b);
}

Formula less(const Case& of, const Formula& formula, engine::Length by) {
    const auto words = words_of(of, by);
    const bool is_nothing = formula.empty() || formula == "0";
    return is_nothing ? "-" + words : "(" + formula + ") - " + words;
}

void let_run_on(const Case& of, const Named& it, bool at_from, Ways& ways) {
    const auto width = width_of(of, *it.member);
    if (!width) return;
    Member longer = *it.member;
    auto& allowance = at_from ? longer.allowance_from : longer.allowance_to;
    allowance = less(of, allowance, *width);
    ways.push_back({"run on",
                    "Let its end run on by " + words_of(of, *width),
                    {PutMember{it.frame, std::move(longer), {}}}});
}

Sense other(Sense sense) { return sense == Sense::plus ? Sense::minus : Sense::plus; }

void turn_legs(const Named& it, Ways& ways) {
    const auto axes = across(it.member->run);
    for (std::size_t k = 0; k < 2; ++k) {
        Member turned = *it.member;
        turned.legs[k] = other(turned.legs[k]);
        const char axis = axis_letters[index_of(axes[k])];
        ways.push_back({std::string("turn ") + axis,
                        "Turn the leg of " + it.member->name + " that points along " + axis,
                        {PutMember{it.frame, std::move(turned), {}}}});
    }
}

// The piece of the member with the end in question.
const Piece* piece_of(const Case& of, const Named& it, Index part) {
    const auto f = index_of_frame(of, it.frame);
    if (!f || *f >= of.ailing.resolved.frames.size()) return nullptr;
    const auto index = index_of_member(of.project().frames[*f], it.member->name);
    for (const auto& piece : of.ailing.resolved.pieces) {
        if (piece.kind == PieceKind::bar && piece.frame == *f && index && piece.member == *index &&
            piece.part == part) {
            return &piece;
        }
    }
    return nullptr;
}

// Members that stand within a leg of the end.
std::vector<std::string> near_end(const Case& of, const Piece& piece, bool at_lo, Nm reach) {
    Box end = piece.extents;
    const auto run = index_of(piece.run);
    if (at_lo) {
        end.hi[run] = end.lo[run];
    } else {
        end.lo[run] = end.hi[run];
    }
    for (std::size_t k = 0; k < 3; ++k) {
        end.lo[k] -= reach;
        end.hi[k] += reach;
    }
    const auto& frame = of.project().frames[piece.frame];
    std::vector<std::string> names;
    for (const auto& near : of.ailing.resolved.pieces) {
        const bool is_other = near.frame == piece.frame && near.kind == PieceKind::bar &&
                              near.member != piece.member && near.member < frame.members.size();
        if (!is_other || !engine::overlaps(near.extents, end)) continue;
        const auto& name = frame.members[near.member].name;
        if (std::ranges::find(names, name) == names.end()) names.push_back(name);
    }
    return names;
}

void join_to(const Case& of, const FrameJoint& joint, Ways& ways) {
    for (const auto& recipe : recipes()) {
        if (!recipe.is_chosen) continue;
        auto stated = stated_joint(of, joint);
        if (stated.recipe == std::string(recipe.name)) continue;
        stated.recipe = std::string(recipe.name);
        ways.push_back({"recipe " + *stated.recipe + " with " + joint.members[1],
                        "Join it to " + joint.members[1] + " by " + *stated.recipe,
                        {PutJoint{joint.frame, std::move(stated)}}});
    }
}

void hold_member_end(const Case& of, const Named& it, Ways& ways) {
    const auto part =
        static_cast<Index>(std::max(number_of(of.finding, "piece").value_or(1.0) - 1.0, 0.0));
    const bool at_from = number_of(of.finding, "end").value_or(0.0) == 0.0;
    const auto* piece = piece_of(of, it, part);
    const auto width = width_of(of, *it.member);
    if (piece != nullptr && width) {
        // A cleat is the mend that a maker thinks of first.
        Ways joined;
        for (const auto& other : near_end(of, *piece, at_from, width->nm())) {
            join_to(of, {it.frame, {it.member->name, other}}, joined);
        }
        std::stable_partition(joined.begin(), joined.end(), [](const Mend& mend) {
            return mend.name.rfind("recipe corner cleat", 0) == 0;
        });
        for (auto& way : joined) ways.push_back(std::move(way));
    }
    let_run_on(of, it, at_from, ways);
    turn_legs(it, ways);
}

}  // namespace

Ways hold_end(const Case& of) {
    Ways ways;
    const auto members = members_of(of);
    for (const auto& it : members) hold_member_end(of, it, ways);
    if (members.empty()) return other_place(of);
    return ways;
}

Ways other_rank(const Case& of) {
    constexpr std::size_t most_tried = 6;
    constexpr int outside_all = 1;
    Ways ways;
    const auto members = members_of(of);
    for (std::size_t i = 0; i < members.size() && i < most_tried; ++i) {
        Member ranked = *members[i].member;
        ranked.rank = outside_all;
        ways.push_back({"rank " + std::to_string(i + 1),
                        "Let " + ranked.name + " lie outside the others",
                        {PutMember{members[i].frame, std::move(ranked), {}}}});
    }
    return ways;
}

Ways joints_of_member(const Case& of) {
    constexpr std::size_t most_tried = 6;
    Ways ways;
    for (const auto& it : members_of(of)) {
        const auto f = index_of_frame(of, it.frame);
        const auto* frame = frame_named(of, it.frame);
        if (!f || frame == nullptr) continue;
        const auto index = index_of_member(*frame, it.member->name);
        std::vector<FrameJoint> joints;
        for (const auto& joint : of.ailing.resolved.joints) {
            if (joint.frame != *f || joints.size() == most_tried) continue;
            for (const std::size_t k : {std::size_t{0}, std::size_t{1}}) {
                const auto mine = of.ailing.resolved.pieces[joint.pieces[k]].member;
                const auto its = of.ailing.resolved.pieces[joint.pieces[1 - k]].member;
                if (mine == no_index || mine != index || its >= frame->members.size()) continue;
                const FrameJoint named_joint{it.frame, {it.member->name, frame->members[its].name}};
                if (std::ranges::find(joints, named_joint) == joints.end())
                    joints.push_back(named_joint);
            }
        }
        for (const auto& joint : frame->joints) {
            for (const std::size_t k : {std::size_t{0}, std::size_t{1}}) {
                if (joint.members[k] != it.member->name) continue;
                const FrameJoint stated{it.frame, {joint.members[k], joint.members[1 - k]}};
                if (std::ranges::find(joints, stated) == joints.end()) joints.push_back(stated);
            }
        }
        for (const auto& joint : joints) join_to(of, joint, ways);
        turn_legs(it, ways);
    }
    return ways;
}

Ways apart(const Case& of) {
    Ways ways;
    if (std::ranges::any_of(of.finding.concerns, [](const Subject& subject) {
            return subject.kind == SubjectKind::diagonal || subject.kind == SubjectKind::leaning;
        })) {
        ways = other_place(of);
    }
    for (const auto& it : members_of(of)) turn_legs(it, ways);
    for (auto& way : joints_of_member(of)) ways.push_back(std::move(way));
    for (auto& way : take_out(of)) ways.push_back(std::move(way));
    return ways;
}

Ways foot_elsewhere(const Case& of) {
    Ways ways;
    if (of.finding.code == "foot_lacks_drill") ways = drills_to_get(of);
    std::erase_if(ways, [](const Mend& mend) { return mend.name.rfind("drill ", 0) != 0; });
    const auto system = [&]() {
        for (const auto& screw : of.catalogue().screws) {
            if (of.finding.what.find(screw.id) != std::string::npos) return screw.system;
        }
        return MeasureSystem::inch;
    }();
    if (of.finding.code == "foot_has_no_room" || of.finding.code == "foot_lacks_drill") {
        for (const auto& screw : of.catalogue().screws) {
            if (screw.system != system) continue;
            auto shop = of.project().shop;
            shop.foot_screw = screw.id;
            ways.push_back(
                {"foot screw " + screw.id, "Fix feet with " + screw.id, {SetShop{shop}}});
        }
    }
    if (of.finding.code == "foot_lacks_angle") {
        for (const auto& section : of.catalogue().sections) {
            if (section.form != SectionForm::angle || section.system != system) continue;
            Stock stock{.name = section.id, .section = section.id, .alloy = section.usual_alloy};
            ways.push_back({"stock " + section.id,
                            "Add " + section.id + " to the stock",
                            {PutStock{std::move(stock), {}}}});
        }
    }
    for (const auto& it : members_of(of)) {
        for (const bool at_from : {true, false}) {
            Member without = *it.member;
            const auto& plane = at_from ? without.from : without.to;
            const bool is_asked = at_from ? without.foot_from : without.foot_to;
            if (!is_asked || of.finding.what.find("\"" + plane + "\"") == std::string::npos)
                continue;
            (at_from ? without.foot_from : without.foot_to) = false;
            ways.push_back(
                {"no foot", "Do without that foot", {PutMember{it.frame, std::move(without), {}}}});
        }
    }
    return ways;
}

}  // namespace model

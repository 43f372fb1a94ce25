#include "editor/joint_list.h"

#include "editor/by_name.h"
#include "editor/node_bars.h"
#include "model/resolve/piece_subject.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>
#include <utility>

namespace editor {
namespace {

using model::Index;

bool is_same(const JointName& a, const JointName& b) {
    return a.frame == b.frame &&
           (a.members == b.members || a.members == std::array{b.members[1], b.members[0]});
}

// The name of the joint that these pieces are part of; none when it is no joint of two members.
std::optional<JointName> name_of(const model::Project& project,
                                 Index frame,
                                 const std::array<Index, 2>& members) {
    if (frame >= project.frames.size() || members[0] == members[1]) return std::nullopt;
    const auto& known = project.frames[frame].members;
    if (members[0] >= known.size() || members[1] >= known.size()) return std::nullopt;
    return JointName{project.frames[frame].name, {known[members[0]].name, known[members[1]].name}};
}

// The name by which a joint knows the piece; empty: none.
std::string_view name_in_joint(const model::Frame& frame, const model::Piece& piece) {
    if (piece.member < frame.members.size()) return frame.members[piece.member].name;
    if (piece.kind == model::PieceKind::brace && piece.stated < frame.diagonals.size())
        return frame.diagonals[piece.stated].name;
    if (piece.kind == model::PieceKind::leaning && piece.stated < frame.leaning.size())
        return frame.leaning[piece.stated].name;
    return {};
}

// Of the lap of two pieces; one that a recipe made stands for the members that it joins.
std::optional<JointName> name_of(const model::Project& project,
                                 const model::Resolved& resolved,
                                 const model::Joint& lap) {
    if (lap.frame >= project.frames.size()) return std::nullopt;
    const auto& first = resolved.pieces[lap.pieces[0]];
    const auto& second = resolved.pieces[lap.pieces[1]];
    if (!model::is_between_nodes(first.kind) && !model::is_between_nodes(second.kind))
        return name_of(project, lap.frame, model::members_joined(first, second));
    const auto& frame = project.frames[lap.frame];
    JointName name{
        frame.name,
        {std::string(name_in_joint(frame, first)), std::string(name_in_joint(frame, second))}};
    if (name.members[0].empty() || name.members[1].empty()) return std::nullopt;
    return name;
}

// The two members that a subject names: "post left + rail top".
std::optional<JointName> name_of(const model::Subject& subject) {
    constexpr std::string_view plus = " + ";
    const auto at = subject.name.find(plus);
    if (subject.kind != model::SubjectKind::joint || at == std::string::npos) return std::nullopt;
    return JointName{subject.frame,
                     {subject.name.substr(0, at), subject.name.substr(at + plus.size())}};
}

class JointList {
public:
    explicit JointList(const model::Project& project) : project_{project} {}

    // Null when a member of that name is not in the frame.
    MemberJoint* joint_of(const JointName& name) {
        auto key = std::array{name.frame, name.members[0], name.members[1]};
        if (key[2] < key[1]) std::swap(key[1], key[2]);
        const auto known = at_.find(key);
        if (known != at_.end()) return &joints_[known->second];
        if (!is_there(name)) return nullptr;
        at_.emplace(std::move(key), joints_.size());
        joints_.push_back({.name = name, .node_bar = node_bar_word(project_, name)});
        return &joints_.back();
    }

    std::vector<MemberJoint> take() && { return std::move(joints_); }

private:
    bool is_there(const JointName& name) const {
        const auto* frame = by_name(project_.frames, name.frame);
        return frame != nullptr && is_taken(*frame, name.members[0]) &&
               is_taken(*frame, name.members[1]);
    }

    const model::Project& project_;
    std::vector<MemberJoint> joints_;
    std::map<std::array<std::string, 3>, std::size_t> at_;
};

void add_lap(MemberJoint& joint, const model::Joint& lap) {
    const int count = static_cast<int>(lap.fastener_count);
    joint.fewest_in_lap = joint.recipe ? std::min(joint.fewest_in_lap, count) : count;
    joint.wanted_in_lap = std::max(joint.wanted_in_lap, static_cast<int>(lap.wanted));
    joint.fasteners += count;
    joint.recipe = lap.recipe;
}

void add_joined(JointList& list, const model::Project& project, const model::Resolved& resolved) {
    for (const auto& lap : resolved.joints) {
        const auto name = name_of(project, resolved, lap);
        if (!name) continue;
        if (auto* joint = list.joint_of(*name)) add_lap(*joint, lap);
    }
}

double mm(model::Nm nm) { return engine::Length::from_nm(nm).mm(); }

// From the point to the nearest one of the lap.
double distance_mm(const model::Resolved& resolved,
                   const model::Joint& lap,
                   const glm::dvec3& at_mm) {
    const auto& frame = resolved.frames[lap.frame];
    const auto a = model::to_room(frame, lap.lap.lo);
    const auto b = model::to_room(frame, lap.lap.hi);
    double square = 0.0;
    for (int i = 0; i < 3; ++i) {
        const auto axis = static_cast<std::size_t>(i);
        const double lo = mm(std::min(a[axis], b[axis]));
        const double hi = mm(std::max(a[axis], b[axis]));
        const double off = std::max({lo - at_mm[i], at_mm[i] - hi, 0.0});
        square += off * off;
    }
    return std::sqrt(square);
}

// The member, the brace or the leaning member that is chosen; empty: another part.
std::string chosen_name(const model::Project& project,
                        const model::Resolved& resolved,
                        const PieceName& piece) {
    if (!piece.member.empty()) return piece.member;
    const auto found = find_piece(project, resolved, piece);
    if (!found) return {};
    const auto& it = resolved.pieces[*found];
    return std::string(name_in_joint(project.frames[it.frame], it));
}

// The two members whose pieces are chosen, as long as it is two.
std::optional<JointName> name_of_two(const model::Project& project,
                                     const model::Resolved& resolved,
                                     const Selection& selection) {
    constexpr std::size_t most = 12;  // so many pieces are not of two
    if (selection.pieces.size() > most) return std::nullopt;
    std::optional<JointName> name;
    for (const auto& piece : selection.pieces) {
        const auto chosen = chosen_name(project, resolved, piece);
        if (chosen.empty()) continue;
        if (!name) name = JointName{piece.frame, {chosen, {}}};
        if (piece.frame != name->frame) return std::nullopt;
        if (chosen == name->members[0] || chosen == name->members[1]) continue;
        if (!name->members[1].empty()) return std::nullopt;
        name->members[1] = chosen;
    }
    if (!name || name->members[1].empty()) return std::nullopt;
    return name;
}

std::optional<JointName> name_of_part(const model::Project& project,
                                      const model::Resolved& resolved,
                                      const PieceName& part) {
    const auto piece = find_piece(project, resolved, part);
    if (!piece) return std::nullopt;
    const auto& it = resolved.pieces[*piece];
    return name_of(project, it.frame, it.serves);
}

}  // namespace

std::vector<MemberJoint> member_joints(const model::Project& project,
                                       const model::Resolved& resolved,
                                       const std::vector<model::Finding>& findings) {
    JointList list{project};
    add_joined(list, project, resolved);
    for (const auto& finding : findings) {
        if (finding.severity == model::Severity::note) continue;
        for (const auto& subject : finding.concerns) {
            const auto name = name_of(subject);
            auto* joint = name ? list.joint_of(*name) : nullptr;
            if (joint != nullptr) joint->has_finding = true;
        }
    }
    for (const auto& frame : project.frames) {
        for (const auto& stated : frame.joints) {
            auto* joint = list.joint_of({frame.name, stated.members});
            if (joint != nullptr) joint->is_stated = true;
        }
    }
    return std::move(list).take();
}

std::string_view node_bar_word(const model::Project& project, const JointName& joint) {
    const auto* frame = by_name(project.frames, joint.frame);
    if (frame == nullptr) return {};
    const auto first = node_bar_word(*frame, joint.members[0]);
    return first.empty() ? node_bar_word(*frame, joint.members[1]) : first;
}

std::string words_of(const JointName& joint) { return joint.members[0] + " + " + joint.members[1]; }

model::Subject subject_of(const JointName& joint) {
    return {model::SubjectKind::joint, joint.frame, words_of(joint)};
}

const MemberJoint* find_joint(const std::vector<MemberJoint>& joints, const JointName& name) {
    const auto at = std::find_if(joints.begin(), joints.end(), [&](const MemberJoint& joint) {
        return is_same(joint.name, name);
    });
    return at == joints.end() ? nullptr : &*at;
}

const model::JointOverride* stated_joint(const model::Project& project, const JointName& joint) {
    const auto* frame = by_name(project.frames, joint.frame);
    if (frame == nullptr) return nullptr;
    const auto at = std::find_if(frame->joints.begin(), frame->joints.end(),
                                 [&](const model::JointOverride& stated) {
                                     return is_same({joint.frame, stated.members}, joint);
                                 });
    return at == frame->joints.end() ? nullptr : &*at;
}

std::optional<JointName> chosen_joint(const model::Project& project,
                                      const model::Resolved& resolved,
                                      const std::vector<MemberJoint>& joints,
                                      const Selection& selection) {
    std::optional<JointName> name;
    if (selection.subjects.size() == 1) name = name_of(selection.subjects.front());
    if (!name && selection.pieces.size() == 1 && selection.pieces.front().member.empty()) {
        name = name_of_part(project, resolved, selection.pieces.front());
    }
    if (!name && selection.subjects.empty()) name = name_of_two(project, resolved, selection);
    if (!name) return std::nullopt;
    const auto* joint = find_joint(joints, *name);
    return joint == nullptr ? std::nullopt : std::optional(joint->name);
}

Selection selection_of_joint(const model::Project& project,
                             const model::Resolved& resolved,
                             const JointName& joint) {
    return selection_of_subjects(project, resolved, {subject_of(joint)});
}

std::optional<JointName> joint_near(const model::Project& project,
                                    const model::Resolved& resolved,
                                    Index piece,
                                    const glm::dvec3& at_mm) {
    constexpr double reach_mm = 12.7;
    double nearest = reach_mm;
    std::optional<JointName> found;
    for (const auto& lap : resolved.joints) {
        if (lap.pieces[0] != piece && lap.pieces[1] != piece) continue;
        const double distance = distance_mm(resolved, lap, at_mm);
        if (distance > nearest) continue;
        const auto name = name_of(project, resolved, lap);
        if (!name) continue;
        nearest = distance;
        found = name;
    }
    return found;
}

}  // namespace editor

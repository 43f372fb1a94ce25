#include "editor/joint_group.h"

#include "editor/by_name.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace editor {
namespace {

const std::string* stock_called(const model::Frame& frame, const std::string& name) {
    if (const auto* member = by_name(frame.members, name)) return &member->stock;
    if (const auto* brace = by_name(frame.diagonals, name)) return &brace->stock;
    if (const auto* leaning = by_name(frame.leaning, name)) return &leaning->stock;
    return nullptr;
}

// Of the two that meet, in the order of the alphabet: which of them lies outside does not count.
std::array<std::string, 2> stocks_of(const model::Project& project, const JointName& joint) {
    std::array<std::string, 2> stocks;
    const auto* frame = by_name(project.frames, joint.frame);
    if (frame == nullptr) return stocks;
    for (std::size_t i = 0; i < 2; ++i) {
        if (const auto* stock = stock_called(*frame, joint.members[i])) stocks[i] = *stock;
    }
    if (stocks[1] < stocks[0]) std::swap(stocks[0], stocks[1]);
    return stocks;
}

// "post left + rail top", without making that text for each of them.
bool is_called(const JointName& joint, std::string_view name, std::size_t first) {
    constexpr std::string_view plus = " + ";
    const std::string_view a = joint.members[first];
    const std::string_view b = joint.members[1 - first];
    return name.size() == a.size() + plus.size() + b.size() && name.starts_with(a) &&
           name.ends_with(b) && name.substr(a.size(), plus.size()) == plus;
}

bool is_it(const model::Subject& subject, const JointName& joint) {
    return subject.kind == model::SubjectKind::joint && subject.frame == joint.frame &&
           (is_called(joint, subject.name, 0) || is_called(joint, subject.name, 1));
}

}  // namespace

std::vector<JointName> chosen_joints(const model::Project& project,
                                     const model::Resolved& resolved,
                                     const std::vector<MemberJoint>& joints,
                                     const Selection& selection) {
    if (const auto one = chosen_joint(project, resolved, joints, selection)) return {*one};
    if (selection.subjects.size() < 2) return {};
    std::vector<JointName> chosen;
    for (const auto& subject : selection.subjects) {
        const auto at = std::ranges::find_if(
            joints, [&](const MemberJoint& joint) { return is_it(subject, joint.name); });
        if (at == joints.end()) return {};
        chosen.push_back(at->name);
    }
    return chosen;
}

Selection selection_of_joints(const model::Project& project,
                              const model::Resolved& resolved,
                              const std::vector<JointName>& joints) {
    std::vector<model::Subject> subjects;
    for (const auto& joint : joints) subjects.push_back(subject_of(joint));
    return selection_of_subjects(project, resolved, subjects);
}

std::vector<JointName> toggled(std::vector<JointName> joints, const JointName& joint) {
    const auto at = std::ranges::find(joints, joint);
    if (at == joints.end()) {
        joints.push_back(joint);
    } else {
        joints.erase(at);
    }
    return joints;
}

std::vector<JointName> joints_like(const model::Project& project,
                                   const std::vector<MemberJoint>& joints,
                                   const JointName& joint) {
    const auto* like = find_joint(joints, joint);
    if (like == nullptr) return {};
    const auto stocks = stocks_of(project, joint);
    std::vector<JointName> alike;
    for (const auto& it : joints) {
        const bool is_alike = it.recipe == like->recipe && it.node_bar == like->node_bar &&
                              stocks_of(project, it.name) == stocks;
        if (is_alike) alike.push_back(it.name);
    }
    return alike;
}

std::string words_of(const std::vector<JointName>& joints) {
    return joints.size() == 1 ? words_of(joints.front())
                              : std::to_string(joints.size()) + " joints";
}

}  // namespace editor

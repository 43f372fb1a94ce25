#include "editor/joint_group_choices.h"

#include "editor/joint_group.h"

#include <utility>

namespace editor {
namespace {

// "Flush at post left + rail top" is "Flush at 12 joints".
std::string with_group_words(std::string label, const JointName& of, const std::string& words) {
    const auto at = label.rfind(words_of(of));
    return at == std::string::npos ? label : label.substr(0, at) + words;
}

// What one of them says of itself ("here that is the flush") is not true of all.
void add(Choice& choice, Choice other) {
    if (choice.what != other.what) choice.what = "not the same for all of them";
    choice.is_now = choice.is_now && other.is_now;
    for (auto& edit : other.edits) choice.edits.push_back(std::move(edit));
}

template <class ChoicesOf>
std::vector<Choice> together(const std::vector<JointName>& joints, const ChoicesOf& choices_of) {
    std::vector<Choice> all;
    for (const auto& joint : joints) {
        auto choices = choices_of(joint);
        if (all.empty()) {
            all = std::move(choices);
            continue;
        }
        for (std::size_t i = 0; i < all.size(); ++i) add(all[i], std::move(choices[i]));
    }
    for (auto& choice : all) {
        choice.label = with_group_words(choice.label, joints.front(), words_of(joints));
    }
    return all;
}

// No edit where nothing is said.
Change back_to_the_rule(const model::Project& project, const std::vector<JointName>& joints) {
    Change all{.edits = {}, .merge_key = {}, .label = "Back to the rule at " + words_of(joints)};
    for (const auto& joint : joints) {
        if (stated_joint(project, joint) == nullptr) continue;
        all.edits.emplace_back(model::RemoveJoint{joint.frame, joint.members});
    }
    return all;
}

}  // namespace

std::vector<Choice> joint_recipe_choices(const model::Project& project,
                                         const std::vector<JointName>& joints) {
    std::vector<JointName> of_members;
    for (const auto& joint : joints) {
        if (node_bar_word(project, joint).empty()) of_members.push_back(joint);
    }
    return together(of_members,
                    [&](const JointName& joint) { return joint_recipe_choices(project, joint); });
}

std::vector<Choice> joint_hold_choices(const model::Project& project,
                                       const std::vector<JointName>& joints) {
    return together(joints,
                    [&](const JointName& joint) { return joint_hold_choices(project, joint); });
}

Change joint_group_change(const model::Project& project,
                          const std::vector<JointName>& joints,
                          const std::function<void(model::JointOverride&)>& change,
                          std::string label) {
    Change all{.edits = {}, .merge_key = {}, .label = std::move(label)};
    for (const auto& joint : joints) {
        const auto before = joint_entry(project, joint);
        auto entry = before;
        change(entry);
        if (entry == before) continue;
        for (auto& edit : joint_change(project, joint.frame, entry, {}).edits) {
            all.edits.push_back(std::move(edit));
        }
    }
    return all;
}

void bring_up_to_date(JointGroup& group,
                      const Derived& derived,
                      const std::vector<MemberJoint>& joints,
                      const Selection& selection) {
    if (group.revision == derived.revision && group.selection == selection) return;
    const auto& project = *derived.project;
    group = {.revision = derived.revision,
             .selection = selection,
             .joints = chosen_joints(project, derived.resolved, joints, selection)};
    for (const auto& joint : group.joints) group.entries.push_back(joint_entry(project, joint));
    group.recipes = joint_recipe_choices(project, group.joints);
    group.holds = joint_hold_choices(project, group.joints);
    group.way_back = back_to_the_rule(project, group.joints);
    if (group.joints.size() == 1) group.alike = joints_like(project, joints, group.joints.front());
    for (const auto& joint : group.joints) {
        const auto* it = find_joint(joints, joint);
        if (it != nullptr && it->has_finding) ++group.troubled;
    }
}

}  // namespace editor

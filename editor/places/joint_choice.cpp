#include "editor/places/joint_choice.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/node_bars.h"
#include "model/resolve/recipe.h"

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace editor {
namespace {

using FrameAndMember = std::pair<std::string_view, std::string_view>;

std::set<FrameAndMember> chosen_members(const Selection& selection) {
    std::set<FrameAndMember> members;
    for (const auto& piece : selection.pieces) {
        if (!piece.member.empty()) members.emplace(piece.frame, piece.member);
        // See model::part_words.
        for (const std::string_view word :
             {NodeBarKind<model::Diagonal>::word, NodeBarKind<model::Leaning>::word}) {
            const std::string_view what = piece.what;
            if (!what.starts_with(word) || what.size() <= word.size()) continue;
            members.emplace(piece.frame, what.substr(word.size() + 1));
        }
    }
    return members;
}

bool is_one_of(const std::set<FrameAndMember>& members, const JointName& joint) {
    return members.count({joint.frame, joint.members[0]}) > 0 ||
           members.count({joint.frame, joint.members[1]}) > 0;
}

std::string text_of(const MemberJoint& joint, bool has_frames) {
    return (has_frames ? joint.name.frame + ": " : "") + words_of(joint.name);
}

bool draw_entry(const MemberJoint& joint, bool is_chosen, bool has_frames) {
    const std::string text = text_of(joint, has_frames);
    const bool clicked = draw_row(text_of(joint, true), text, is_chosen).clicked;
    const std::string state = joint_state_words(joint);
    const ImVec2 least = ImGui::GetItemRectMin();
    const ImVec2 most = ImGui::GetItemRectMax();
    const float room = most.x - least.x - size_of_text(text, Type::text).x - scaled(24);
    const ImU32 ink = joint.has_finding ? colour::amber
                      : joint.is_stated ? colour::dye
                                        : colour::quiet;
    if (room > scaled(40)) {
        draw_text_at(*ImGui::GetWindowDrawList(), {most.x - scaled(6), least.y + scaled(2)},
                     text_to_fit(state, Type::small, room), Type::small, ink, Align::right);
    }
    return clicked;
}

// Only what shows is drawn, however many there are.
std::optional<JointName> draw_list(const std::vector<MemberJoint>& joints,
                                   const JointOrder& order,
                                   const std::optional<JointName>& chosen,
                                   bool has_frames) {
    std::optional<JointName> clicked;
    if (order.of_chosen > 0) {
        draw_text("Those of the chosen members come first", Type::small, colour::quiet);
    }
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(order.joints.size()));
    while (clipper.Step()) {
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
            const auto& joint = joints[order.joints[static_cast<std::size_t>(i)]];
            if (draw_entry(joint, chosen && *chosen == joint.name, has_frames)) {
                clicked = joint.name;
            }
        }
    }
    return clicked;
}

}  // namespace

JointOrder joint_order(const std::vector<MemberJoint>& joints, const Selection& selection) {
    JointOrder order;
    const auto members = chosen_members(selection);
    for (std::size_t i = 0; i < joints.size(); ++i) order.joints.push_back(i);
    const auto end =
        std::stable_partition(order.joints.begin(), order.joints.end(),
                              [&](std::size_t i) { return is_one_of(members, joints[i].name); });
    order.of_chosen = static_cast<std::size_t>(end - order.joints.begin());
    return order;
}

std::string joint_state_words(const MemberJoint& joint) {
    if (!joint.recipe) return "not joined";
    std::string words(joint.node_bar.empty() ? model::recipes()[*joint.recipe].name
                                             : joint.node_bar);
    if (joint.fewest_in_lap < joint.wanted_in_lap) {
        return words + ", " + std::to_string(joint.fewest_in_lap) + " of " +
               std::to_string(joint.wanted_in_lap) + " in a lap";
    }
    return words + ", " + std::to_string(joint.fasteners) +
           (joint.fasteners == 1 ? " fastener" : " fasteners");
}

std::optional<JointName> draw_joint_list(const Derived& derived,
                                         const std::vector<MemberJoint>& joints,
                                         const Selection& selection) {
    const ItemScope items("Joint list");
    const ChildScope list("joints");
    return draw_list(joints, joint_order(joints, selection), std::nullopt,
                     derived.project->frames.size() > 1);
}

std::optional<JointName> draw_joint_choice(const Derived& derived,
                                           const std::vector<MemberJoint>& joints,
                                           const std::optional<JointName>& chosen,
                                           const Selection& selection) {
    const bool has_frames = derived.project->frames.size() > 1;
    const std::string text =
        chosen ? (has_frames ? chosen->frame + ": " : "") + words_of(*chosen) : "choose a joint";
    const float width = ImGui::GetContentRegionAvail().x;
    if (draw_button("Joint of choice", {.text = text_with_arrow(text, width), .width = width})) {
        ImGui::OpenPopup("Joint list");
    }
    if (chosen) draw_hint(text);
    const float room = popup_room();
    std::optional<JointName> clicked;
    {
        const PopupScope open("Joint list");
        if (!open) return std::nullopt;
        const float line = ImGui::GetTextLineHeightWithSpacing();
        const float height = line * static_cast<float>(joints.size() + 1) + scaled(6);
        const float most_wide = ImGui::GetIO().DisplaySize.x - scaled(60);
        const ChildScope list(
            "joints", {std::min(scaled(430), most_wide), std::min({scaled(340), room, height})});
        clicked = draw_list(joints, joint_order(joints, selection), chosen, has_frames);
        if (clicked) ImGui::CloseCurrentPopup();
    }
    return clicked;
}

}  // namespace editor

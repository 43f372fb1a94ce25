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

// What was chosen elsewhere brings its own members' joints to the top.
void put_in_order(JointListing& listing,
                  const Derived& derived,
                  const std::vector<MemberJoint>& joints,
                  const Selection& selection) {
    if (listing.revision == derived.revision && listing.chosen == selection) return;
    listing.revision = derived.revision;
    listing.chosen = selection;
    listing.order = joint_order(joints, selection);
}

// From the anchor to the place that was clicked, as the list shows them.
std::vector<JointName> range_to(const std::vector<MemberJoint>& joints,
                                const JointListing& listing,
                                std::size_t clicked) {
    const auto& order = listing.order.joints;
    std::size_t from = clicked;
    for (std::size_t i = 0; i < order.size(); ++i) {
        if (listing.anchor == joints[order[i]].name) from = i;
    }
    std::vector<JointName> range;
    for (std::size_t i = std::min(from, clicked); i <= std::max(from, clicked); ++i) {
        range.push_back(joints[order[i]].name);
    }
    return range;
}

bool goes_on_choosing() { return ImGui::GetIO().KeyShift || ImGui::GetIO().KeyCtrl; }

// A plain click chooses one; with Ctrl it joins those that are chosen or leaves them; with Shift
// all from the one before it to this one are chosen.
std::vector<JointName> after_click(const std::vector<MemberJoint>& joints,
                                   JointListing& listing,
                                   const std::vector<JointName>& chosen,
                                   std::size_t clicked) {
    const auto& name = joints[listing.order.joints[clicked]].name;
    const ImGuiIO& io = ImGui::GetIO();
    if (io.KeyShift && listing.anchor) {
        auto range = range_to(joints, listing, clicked);
        if (!io.KeyCtrl) return range;
        for (const auto& it : chosen) {
            if (std::ranges::find(range, it) == range.end()) range.push_back(it);
        }
        return range;
    }
    listing.anchor = name;
    return io.KeyCtrl ? toggled(chosen, name) : std::vector<JointName>{name};
}

// Only what shows is drawn, however many there are.
std::optional<std::size_t> draw_rows(const std::vector<MemberJoint>& joints,
                                     const JointOrder& order,
                                     const std::vector<JointName>& chosen,
                                     bool has_frames) {
    std::optional<std::size_t> clicked;
    draw_text(order.of_chosen > 0 ? "Those of the chosen members come first; Shift or Ctrl for more"
                                  : "Click one; with Shift or Ctrl several",
              Type::small, colour::quiet);
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(order.joints.size()));
    while (clipper.Step()) {
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
            const auto at = static_cast<std::size_t>(i);
            const auto& joint = joints[order.joints[at]];
            const bool is_chosen = std::ranges::find(chosen, joint.name) != chosen.end();
            if (draw_entry(joint, is_chosen, has_frames)) clicked = at;
        }
    }
    return clicked;
}

std::optional<std::vector<JointName>> draw_list(const Derived& derived,
                                                const std::vector<MemberJoint>& joints,
                                                const std::vector<JointName>& chosen,
                                                JointListing& listing,
                                                const Selection& selection) {
    put_in_order(listing, derived, joints, selection);
    const auto clicked =
        draw_rows(joints, listing.order, chosen, derived.project->frames.size() > 1);
    if (!clicked) return std::nullopt;
    auto after = after_click(joints, listing, chosen, *clicked);
    if (goes_on_choosing()) {
        listing.chosen = selection_of_joints(*derived.project, derived.resolved, after);
    }
    return after;
}

std::string text_of(const std::vector<JointName>& chosen, bool has_frames) {
    if (chosen.empty()) return "choose a joint";
    const bool tells_frame = has_frames && chosen.size() == 1;
    return (tells_frame ? chosen.front().frame + ": " : "") + words_of(chosen);
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

std::optional<std::vector<JointName>> draw_joint_list(const Derived& derived,
                                                      const std::vector<MemberJoint>& joints,
                                                      JointListing& listing,
                                                      const Selection& selection) {
    const ItemScope items("Joint list");
    const ChildScope list("joints");
    auto after = draw_list(derived, joints, {}, listing, selection);
    listing.wants_open = after && goes_on_choosing();
    return after;
}

std::optional<std::vector<JointName>> draw_joint_choice(const Derived& derived,
                                                        const std::vector<MemberJoint>& joints,
                                                        const std::vector<JointName>& chosen,
                                                        JointListing& listing,
                                                        const Selection& selection) {
    const std::string text = text_of(chosen, derived.project->frames.size() > 1);
    const float width = ImGui::GetContentRegionAvail().x;
    if (draw_button("Joint of choice", {.text = text_with_arrow(text, width), .width = width})) {
        ImGui::OpenPopup("Joint list");
        listing.revision.reset();
        if (!chosen.empty()) listing.anchor = chosen.back();
    }
    draw_hint(text);
    if (std::exchange(listing.wants_open, false)) ImGui::OpenPopup("Joint list");
    const float room = popup_room();
    const PopupScope open("Joint list");
    if (!open) return std::nullopt;
    const float line = ImGui::GetTextLineHeightWithSpacing();
    const float height = line * static_cast<float>(joints.size() + 1) + scaled(6);
    const float most_wide = ImGui::GetIO().DisplaySize.x - scaled(60);
    const ChildScope list(
        "joints", {std::min(scaled(430), most_wide), std::min({scaled(340), room, height})});
    auto after = draw_list(derived, joints, chosen, listing, selection);
    if (after && !goes_on_choosing()) ImGui::CloseCurrentPopup();
    return after;
}

}  // namespace editor

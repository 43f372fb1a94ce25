#include "editor/places/join.h"

#include "editor/by_name.h"
#include "editor/join_choices.h"
#include "editor/kit/widgets.h"
#include "editor/places/choice_button.h"
#include "editor/places/fastener_choice.h"
#include "editor/places/join_settings.h"
#include "editor/places/joint_choice.h"
#include "editor/places/joint_findings.h"
#include "editor/places/price_rows.h"

#include <algorithm>
#include <array>
#include <utility>

namespace editor {
namespace {

struct JoinHands {
    const Derived& derived;
    const model::Catalogue& catalogue;
    JoinState& state;
    Selection& selection;
};

std::optional<Change> change_if(const Choice* choice) {
    return choice == nullptr ? std::nullopt : std::optional(change_of(*choice));
}

// What is for one joint, for a frame, for all: one of them is shown.
void draw_scopes(JoinScope& scope) {
    struct Row {
        JoinScope scope;
        const char* name;
        const char* hint;
    };
    constexpr std::array<Row, 3> rows{
        {{JoinScope::joint, "Joint", "How two members meet"},
         {JoinScope::frame, "Frame", "How the members of a frame meet, unless a joint says "
                                     "otherwise"},
         {JoinScope::project, "Project", "How members meet, unless a frame or a joint says "
                                         "otherwise"}}};
    const float gap = ImGui::GetStyle().ItemSpacing.x;
    const float width = (ImGui::GetContentRegionAvail().x - 2 * gap) / 3;
    for (const auto& row : rows) {
        if (row.scope != rows.front().scope) ImGui::SameLine();
        const auto weight = row.scope == scope ? Weight::main : Weight::plain;
        if (draw_button(row.name, {.weight = weight, .width = width})) scope = row.scope;
        draw_hint(row.hint);
    }
    ImGui::Dummy(scaled(1, 2));
}

void draw_heading(const char* text) {
    ImGui::Dummy(scaled(1, 4));
    draw_text(text, Type::strong);
}

// ---- one joint ----------------------------------------------------------------------------------

std::string where_of(const JointName& joint) {
    return joint.frame + ": joint " + words_of(joint);
}

std::optional<Change> draw_chosen(JoinHands& hands, const JointName& joint) {
    const auto& project = *hands.derived.project;
    draw_joint_findings(hands.derived, joint);
    draw_heading("How the two meet");
    auto change = change_if(draw_price_rows({"meet", where_of(joint), where_of(joint)},
                                            joint_recipe_choices(project, joint), hands.derived,
                                            hands.catalogue, hands.state.prices));
    draw_heading("What holds them");
    keep_first(change, draw_joint_settings(hands.derived, hands.catalogue, joint));
    ImGui::Dummy(scaled(1, 2));
    keep_first(change, change_if(draw_price_rows({"hold", where_of(joint), where_of(joint)},
                                                 joint_hold_choices(project, joint), hands.derived,
                                                 hands.catalogue, hands.state.prices)));
    ImGui::Dummy(scaled(1, 2));
    keep_first(change, draw_note_field(hands.derived, joint, hands.state.typing));
    if (stated_joint(project, joint) == nullptr) return change;
    if (draw_button("Back to the rule", {.text = "Join this one like the others",
                                         .weight = Weight::link})) {
        change = change_of(model::RemoveJoint{joint.frame, joint.members});
    }
    draw_hint("Forgets all that is said of this joint, its note too");
    return change;
}

std::optional<Change> draw_joint(JoinHands& hands) {
    const auto& now = hands.derived;
    const auto joint =
        chosen_joint(*now.project, now.resolved, hands.state.joints, hands.selection);
    if (const auto other = draw_joint_choice(now, hands.state.joints, joint, hands.selection)) {
        hands.selection = selection_of_joint(*now.project, now.resolved, *other);
        return std::nullopt;
    }
    if (joint) return draw_chosen(hands, *joint);
    draw_wrapped("Click in the view where two bars meet, or choose a joint from the list. With a "
                 "member chosen, its own joints come first.",
                 Type::text, colour::quiet);
    return std::nullopt;
}

// ---- a frame, and all ---------------------------------------------------------------------------

const model::Frame* frame_in_hand(const Derived& derived, JoinState& state) {
    const auto& frames = derived.project->frames;
    if (frames.empty()) return nullptr;
    const auto* frame = by_name(frames, state.frame);
    return frame != nullptr ? frame : &frames.front();
}

void draw_frame_choice(const Derived& derived, const model::Frame& frame, JoinState& state) {
    const auto& frames = derived.project->frames;
    if (frames.size() == 1) {
        draw_text(frame.name, Type::strong);
        return;
    }
    std::vector<ListEntry> entries;
    std::size_t chosen = 0;
    for (const auto& it : frames) {
        if (&it == &frame) chosen = entries.size();
        entries.push_back({it.name});
    }
    const auto clicked = draw_choice_button("Frame of choice", "", entries, chosen);
    if (clicked) state.frame = frames[*clicked].name;
}

// Joints that say otherwise keep their own way.
void draw_exceptions(const model::Frame& frame) {
    const auto own = std::count_if(frame.joints.begin(), frame.joints.end(),
                                   [](const auto& joint) { return joint.recipe.has_value(); });
    if (own == 0) return;
    draw_wrapped(own == 1 ? "One joint of it has a way of its own and keeps it."
                          : std::to_string(own) + " joints of it have ways of their own and keep "
                                                  "them.",
                 Type::small, colour::quiet);
}

std::optional<Change> draw_frame(JoinHands& hands) {
    const auto* frame = frame_in_hand(hands.derived, hands.state);
    if (frame == nullptr) return std::nullopt;
    draw_frame_choice(hands.derived, *frame, hands.state);
    draw_heading("How its members meet");
    draw_exceptions(*frame);
    return change_if(draw_price_rows({"meet", "frame " + frame->name, "frame " + frame->name},
                                     frame_recipe_choices(*hands.derived.project, *frame),
                                     hands.derived, hands.catalogue, hands.state.prices));
}

std::optional<Change> draw_project(JoinHands& hands) {
    draw_heading("How members meet");
    auto change = change_if(draw_price_rows({"meet", "project", {}},
                                            shop_recipe_choices(*hands.derived.project),
                                            hands.derived, hands.catalogue, hands.state.prices));
    draw_heading("What holds them");
    keep_first(change, draw_fastener_choice(hands.derived, hands.catalogue));
    keep_first(change, draw_shop_settings(hands.derived, hands.catalogue));
    keep_first(change, draw_gusset_field(hands.derived, hands.state.typing));
    return change;
}

// After a change the same joint is chosen, with the parts that it has now.
void follow(const Derived& now, JoinState& state, Selection& selection) {
    if (state.revision == now.revision) return;
    state.joints = member_joints(*now.project, now.resolved, now.findings);
    state.revision = now.revision;
    if (selection.subjects.size() != 1) return;
    const auto joint = chosen_joint(*now.project, now.resolved, state.joints, selection);
    if (joint) selection = selection_of_joint(*now.project, now.resolved, *joint);
}

// What is selected brings its frame along, once.
void take_frame(JoinState& state, const Selection& selection) {
    if (selection.pieces.empty()) return;
    const auto& frame = selection.pieces.front().frame;
    if (frame == state.seen_frame) return;
    state.frame = frame;
    state.seen_frame = frame;
}

}  // namespace

std::optional<Change> draw_join(const Area& area,
                                const Derived& derived,
                                const model::Catalogue& catalogue,
                                JoinState& state,
                                Selection& selection) {
    const PanelScope panel("Join", area);
    follow(derived, state, selection);
    take_frame(state, selection);
    begin_prices(state.prices, derived, !ImGui::IsAnyMouseDown());
    if (derived.project->frames.empty()) {
        draw_text("There is no frame to be joined yet", colour::quiet);
        return std::nullopt;
    }
    draw_scopes(state.scope);
    JoinHands hands{derived, catalogue, state, selection};
    switch (state.scope) {
        case JoinScope::joint:
            return draw_joint(hands);
        case JoinScope::frame:
            return draw_frame(hands);
        case JoinScope::project:
            break;
    }
    return draw_project(hands);
}

}  // namespace editor

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
    constexpr std::array<Row, 3> rows{{{JoinScope::joint, "Joint", "How two members meet"},
                                       {JoinScope::frame, "Frame",
                                        "How the members of a frame meet, unless a joint says "
                                        "otherwise"},
                                       {JoinScope::project, "Project",
                                        "How members meet, unless a frame or a joint says "
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

struct SectionTab {
    JoinSection section = JoinSection::meet;
    const char* name = "";
    std::string state;  // what is chosen there
};

void draw_tab(const SectionTab& tab, float width, JoinSection& open) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float height = scaled(42);
    const bool is_open = open == tab.section;
    if (ImGui::InvisibleButton(tab.name, {width, height})) open = tab.section;
    const bool is_hot = ImGui::IsItemHovered();
    log_item(tab.name, tab.state);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImU32 ink = is_open || is_hot ? colour::dye : colour::ink;
    draw_text_at(on, {at.x, at.y + scaled(3)}, text_to_fit(tab.name, Type::strong, width),
                 Type::strong, ink);
    draw_text_at(on, {at.x, at.y + scaled(21)}, text_to_fit(tab.state, Type::small, width),
                 Type::small, colour::quiet);
    const float y = at.y + height - scaled(1);
    on.AddLine({at.x, y}, {at.x + width, y}, is_open ? colour::dye : colour::line,
               scaled(is_open ? 2.5F : 1.0F));
}

// How they meet, and what holds them: one of the two is open.
void draw_sections(const SectionTab& first, const SectionTab& second, JoinSection& open) {
    const float gap = scaled(14);
    const float width = (ImGui::GetContentRegionAvail().x - gap) / 2;
    draw_tab(first, width, open);
    ImGui::SameLine(0, gap);
    draw_tab(second, width, open);
    ImGui::Dummy(scaled(1, 1));
}

std::string name_of_chosen(const std::vector<Choice>& choices) {
    const auto at = std::find_if(choices.begin(), choices.end(),
                                 [](const Choice& choice) { return choice.is_now; });
    return at == choices.end() ? std::string("as stated") : at->name;
}

// ---- one joint ----------------------------------------------------------------------------------

std::string where_of(const JointName& joint) { return joint.frame + ": joint " + words_of(joint); }

std::optional<Change> draw_priced(JoinHands& hands,
                                  const char* group,
                                  const JointName& joint,
                                  const std::vector<Choice>& choices) {
    const auto where = where_of(joint);
    return change_if(draw_price_rows({group, where, where}, choices, hands.derived, hands.catalogue,
                                     hands.state.prices));
}

// Where something is said of the joint: to say nothing of it any more.
std::optional<Change> draw_way_back(const model::Project& project, const JointName& joint) {
    if (stated_joint(project, joint) == nullptr) return std::nullopt;
    const bool is_wanted = draw_button(
        "Back to the rule", {.text = "Join this one like the others", .weight = Weight::link});
    draw_hint("Forgets all that is said of this joint, its note too");
    if (!is_wanted) return std::nullopt;
    return change_of(model::RemoveJoint{joint.frame, joint.members});
}

std::optional<Change> draw_hold(JoinHands& hands,
                                const JointName& joint,
                                const std::vector<Choice>& holds) {
    auto change = draw_joint_settings(hands.derived, hands.catalogue, joint);
    ImGui::Dummy(scaled(1, 2));
    keep_first(change, draw_priced(hands, "hold", joint, holds));
    return change;
}

// A brace or a leaning member lies on another one, and no recipe has a say in how.
std::optional<Change> draw_chosen(JoinHands& hands, const JointName& joint) {
    const auto& project = *hands.derived.project;
    auto& open = hands.state.section;
    auto change = draw_note_field(hands.derived, joint, hands.state.typing);
    keep_first(change, draw_way_back(project, joint));
    draw_joint_findings(hands.derived, joint);
    const auto holds = joint_hold_choices(project, joint);
    if (!node_bar_word(project, joint).empty()) {
        keep_first(change, draw_hold(hands, joint, holds));
        return change;
    }
    const auto recipes = joint_recipe_choices(project, joint);
    draw_sections({JoinSection::meet, "How they meet", name_of_chosen(recipes)},
                  {JoinSection::hold, "What holds them", name_of_chosen(holds)}, open);
    if (open == JoinSection::meet) {
        keep_first(change, draw_priced(hands, "meet", joint, recipes));
        return change;
    }
    keep_first(change, draw_hold(hands, joint, holds));
    return change;
}

std::optional<Change> draw_joint(JoinHands& hands) {
    const auto& now = hands.derived;
    const auto joint =
        chosen_joint(*now.project, now.resolved, hands.state.joints, hands.selection);
    const auto& joints = hands.state.joints;
    std::optional<JointName> other;
    if (joint) {
        other = draw_joint_choice(now, joints, joint, hands.selection);
    } else {
        draw_wrapped("Click in the view where two bars meet, or choose here", Type::text,
                     colour::quiet);
        other = draw_joint_list(now, joints, hands.selection);
    }
    if (other) hands.selection = selection_of_joint(*now.project, now.resolved, *other);
    return joint && !other ? draw_chosen(hands, *joint) : std::nullopt;
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
                          : std::to_string(own) +
                                " joints of it have ways of their own and keep "
                                "them.",
                 Type::small, colour::quiet);
}

std::optional<Change> draw_frame(JoinHands& hands) {
    const auto* frame = frame_in_hand(hands.derived, hands.state);
    if (frame == nullptr) return std::nullopt;
    draw_frame_choice(hands.derived, *frame, hands.state);
    ImGui::Dummy(scaled(1, 2));
    draw_text("How its members meet", Type::strong);
    draw_exceptions(*frame);
    return change_if(draw_price_rows({"meet", "frame " + frame->name, "frame " + frame->name},
                                     frame_recipe_choices(*hands.derived.project, *frame),
                                     hands.derived, hands.catalogue, hands.state.prices));
}

std::optional<Change> draw_project(JoinHands& hands) {
    const auto& shop = hands.derived.project->shop;
    auto& open = hands.state.section;
    const auto recipes = shop_recipe_choices(*hands.derived.project);
    draw_sections({JoinSection::meet, "How they meet", name_of_chosen(recipes)},
                  {JoinSection::hold, "What holds them",
                   shop.fastener.empty() ? "rivets to suit" : shop.fastener},
                  open);
    if (open == JoinSection::meet) {
        return change_if(draw_price_rows({"meet", "project", {}}, recipes, hands.derived,
                                         hands.catalogue, hands.state.prices));
    }
    std::optional<Change> change;
    keep_first(change, draw_fastener_choice(hands.derived, hands.catalogue));
    keep_first(change, draw_shop_settings(hands.derived, hands.catalogue));
    keep_first(change, draw_gusset_field(hands.derived, hands.state.typing));
    keep_first(change, draw_gusset_alloy(hands.derived, hands.catalogue));
    return change;
}

// A price takes as long as working the project out, so none is begun while the hand moves.
bool is_at_rest() {
    const ImGuiIO& io = ImGui::GetIO();
    const bool has_moved = io.MouseDelta.x != 0.0F || io.MouseDelta.y != 0.0F;
    return !ImGui::IsAnyMouseDown() && !has_moved && io.MouseWheel == 0.0F;
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
    begin_prices(state.prices, derived, is_at_rest());
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

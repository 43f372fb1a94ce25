#include "editor/places/join.h"

#include "editor/by_name.h"
#include "editor/join_choices.h"
#include "editor/joint_group.h"
#include "editor/joint_group_choices.h"
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

std::string name_of_chosen(const std::vector<Choice>& choices, const char* none = "as stated") {
    const auto at = std::find_if(choices.begin(), choices.end(),
                                 [](const Choice& choice) { return choice.is_now; });
    return at == choices.end() ? std::string(none) : at->name;
}

// ---- one joint ----------------------------------------------------------------------------------

using Joints = std::vector<JointName>;

std::string where_of(const JointName& joint) { return joint.frame + ": joint " + words_of(joint); }

// Prices are kept by it; of several it is no place that a finding names.
std::string where_of(const Joints& joints) {
    std::string where;
    for (const auto& joint : joints) where += (where.empty() ? "" : "\n") + where_of(joint);
    return where;
}

std::optional<Change> draw_priced(JoinHands& hands,
                                  const char* group,
                                  const Joints& joints,
                                  const std::vector<Choice>& choices) {
    const auto where = where_of(joints);
    return change_if(draw_price_rows({group, where, where}, choices, hands.derived, hands.catalogue,
                                     hands.state.prices));
}

// Where something is said of a joint: to say nothing of it any more.
std::optional<Change> draw_way_back(const JointGroup& group) {
    if (group.way_back.edits.empty()) return std::nullopt;
    const bool is_one = group.joints.size() == 1;
    const bool is_wanted =
        draw_button("Back to the rule",
                    {.text = is_one ? "Join this one like the others" : "Join these as the rule is",
                     .weight = Weight::link});
    draw_hint(is_one ? "Forgets all that is said of this joint, its note too"
                     : "Forgets all that is said of these joints, their notes too");
    return is_wanted ? std::optional(group.way_back) : std::nullopt;
}

std::optional<Change> draw_hold(JoinHands& hands) {
    const auto& group = hands.state.group;
    auto change = draw_joint_settings(hands.derived, hands.catalogue, group);
    ImGui::Dummy(scaled(1, 2));
    keep_first(change, draw_priced(hands, "hold", group.joints, group.holds));
    return change;
}

// An end of a frame has many alike: a button chooses them all.
void draw_alike(JoinHands& hands) {
    const auto& alike = hands.state.group.alike;
    if (alike.size() < 2) return;
    const std::string text = "Choose all " + std::to_string(alike.size()) + " like this one";
    const bool is_wanted = draw_button("All like this one", {.text = text, .weight = Weight::link});
    draw_hint("All that meet in the same way and are of the same two stocks");
    if (!is_wanted) return;
    hands.selection = selection_of_joints(*hands.derived.project, hands.derived.resolved, alike);
}

void draw_several(const JointGroup& group) {
    draw_wrapped("What you choose here is done to all of them, in one step", Type::small,
                 colour::quiet);
    if (group.troubled == 0) return;
    draw_text("there is something to look at: " + std::to_string(group.troubled) + " of them",
              Type::small, colour::amber);
}

std::optional<Change> draw_about(JoinHands& hands) {
    const auto& group = hands.state.group;
    const auto& joints = group.joints;
    const bool is_one = joints.size() == 1;
    std::optional<Change> change;
    if (is_one) {
        change = draw_note_field(hands.derived, joints.front(), hands.state.typing);
        draw_alike(hands);
    } else {
        draw_several(group);
    }
    keep_first(change, draw_way_back(group));
    if (is_one) draw_joint_findings(hands.derived, joints.front());
    return change;
}

// A brace or a leaning member lies on another one, and no recipe has a say in how.
std::optional<Change> draw_chosen(JoinHands& hands) {
    const auto& group = hands.state.group;
    auto& open = hands.state.section;
    auto change = draw_about(hands);
    if (group.recipes.empty()) {
        keep_first(change, draw_hold(hands));
        return change;
    }
    const char* none = group.joints.size() == 1 ? "as stated" : "not all alike";
    draw_sections({JoinSection::meet, "How they meet", name_of_chosen(group.recipes, none)},
                  {JoinSection::hold, "What holds them", name_of_chosen(group.holds, none)}, open);
    keep_first(change, open == JoinSection::meet
                           ? draw_priced(hands, "meet", group.joints, group.recipes)
                           : draw_hold(hands));
    return change;
}

std::optional<Change> draw_joint(JoinHands& hands) {
    const auto& now = hands.derived;
    auto& state = hands.state;
    auto& selection = hands.selection;
    bring_up_to_date(state.group, now, state.joints, selection);
    const auto& chosen = state.group.joints;
    std::optional<Joints> others;
    if (!chosen.empty()) {
        others = draw_joint_choice(now, state.joints, chosen, state.listing, selection);
    } else {
        draw_wrapped("Click in the view where two bars meet, or choose here", Type::text,
                     colour::quiet);
        others = draw_joint_list(now, state.joints, state.listing, selection);
    }
    if (others) selection = selection_of_joints(*now.project, now.resolved, *others);
    return !chosen.empty() && !others ? draw_chosen(hands) : std::nullopt;
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

// After a change the same joints are chosen, with the parts that they have now.
void follow(const Derived& now, JoinState& state, Selection& selection) {
    if (state.revision == now.revision) return;
    state.joints = member_joints(*now.project, now.resolved, now.findings);
    state.revision = now.revision;
    if (selection.subjects.empty()) return;
    const auto chosen = chosen_joints(*now.project, now.resolved, state.joints, selection);
    if (!chosen.empty()) selection = selection_of_joints(*now.project, now.resolved, chosen);
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

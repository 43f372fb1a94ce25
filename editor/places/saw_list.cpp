#include "editor/places/saw_list.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/bar_diagram.h"
#include "editor/places/bar_text.h"
#include "editor/places/choice_row.h"
#include "editor/places/saw_changes.h"
#include "editor/places/saw_cut_lines.h"
#include "editor/places/saw_stops.h"
#include "editor/places/spoil_talk.h"
#include "model/schedule/bar_words.h"
#include "model/schedule/tables.h"

#include <algorithm>

namespace editor {
namespace {

using model::CutState;

bool has_new_bars(const Derived& derived) {
    return std::ranges::any_of(derived.saw, [](const model::SawBar& bar) {
        return bar.from != model::BarFrom::saw && !bar.cuts.empty();
    });
}

std::string bar_head(const model::SawBar& bar, const Derived& derived) {
    return "Bar " + std::to_string(bar.number) + ", " +
           model::length_text(*derived.project, bar.length) + " of " + bar.section;
}

std::string bar_origin(const model::SawBar& bar, const Derived& derived) {
    return model::with_half(model::from_words(bar.from), bar.halved_from, derived.project->shown);
}

std::string rest_words(const model::SawBar& bar, const Derived& derived) {
    const auto least = engine::Length::from_nm(derived.resolved.shop.least_offcut);
    if (bar.is_used_up) return "done with";
    if (bar.offcut <= engine::Length{}) return "nothing left";
    return model::length_text(*derived.project, bar.offcut) +
           (bar.offcut >= least ? " left, to keep" : " scrap");
}

// The piece at that place from the datum end; beside all of them, every piece of the bar.
void choose_of_bar(const model::SawBar& bar,
                   double place_mm,
                   const Derived& derived,
                   Selection& selection) {
    std::vector<model::Index> pieces;
    for (const auto& cut : bar.cuts) {
        if (cut.piece == model::no_index) continue;
        const bool is_there = place_mm >= cut.start.mm() && place_mm <= model::end_of(cut).mm();
        if (is_there) pieces = {cut.piece};
        if (is_there) break;
        pieces.push_back(cut.piece);
    }
    selection = selection_of(*derived.project, derived.resolved, pieces);
}

// All bars are drawn to one scale.
float share_of_longest(const model::SawBar& bar, const Derived& derived) {
    engine::Length longest;
    for (const auto& it : derived.saw) longest = std::max(longest, it.length);
    if (longest.nm() <= 0 || bar.length.nm() <= 0) return 1.0F;
    return static_cast<float>(bar.length.mm() / longest.mm());
}

void draw_trouble(const SawListState& state) {
    if (state.trouble.empty()) return;
    draw_wrapped(state.trouble, Type::small, colour::red);
    log_item("trouble", state.trouble);
}

// What is said beside one of its cuts.
bool says_more(const model::SawBar& bar, const SawListState& state) {
    const bool has_trouble = state.troubled.bar == bar.number && !state.trouble.empty();
    return has_trouble || std::ranges::any_of(bar.cuts, [&](const model::SawCut& cut) {
               return is_talked_of(state, cut);
           });
}

std::optional<Change> draw_one_bar(const model::SawBar& bar, const CutHands& hands) {
    const IdScope id(bar.number);
    const auto& derived = hands.derived;
    draw_text(bar_head(bar, derived), Type::strong);
    ImGui::SameLine();
    draw_text(bar_origin(bar, derived), Type::small, colour::quiet);
    ImGui::SameLine();
    draw_text_right(rest_words(bar, derived), colour::quiet);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x * share_of_longest(bar, derived);
    const std::string name = "saw bar " + std::to_string(bar.number);
    ImGui::InvisibleButton(name.c_str(), {width, scaled(20)});
    if (ImGui::IsItemClicked()) {
        const float share = width > 0.0F ? (ImGui::GetMousePos().x - at.x) / width : 0.0F;
        choose_of_bar(bar, static_cast<double>(share) * bar.length.mm(), derived, hands.selection);
    }
    log_item(name, rest_words(bar, derived));
    draw_hint("Click a piece to choose it, the rest to choose all of the bar");
    draw_saw_bar(*ImGui::GetWindowDrawList(), at, {width, scaled(18)}, bar);
    std::optional<Change> change;
    for (std::size_t i = 0; i < bar.cuts.size(); ++i) {
        if (auto one = draw_cut(bar, i, hands)) change = std::move(one);
        const auto& state = hands.state;
        if (state.troubled.bar == bar.number && state.troubled.cut == i) draw_trouble(state);
        if (!is_talked_of(state, bar.cuts[i])) continue;
        if (auto one = draw_spoil_talk(hands)) change = std::move(one);
    }
    ImGui::Dummy(scaled(1, 6));
    return change;
}

// A bar that is out of sight only takes its room: there may be hundreds.
bool pass_over(const model::SawBar& bar, const SawListState& state) {
    const auto known = state.heights.find(bar.number);
    if (known == state.heights.end()) return false;
    const auto& drawn = known->second;
    if (drawn.cuts != bar.cuts.size() || drawn.scale != scaled(1)) return false;
    if (drawn.has_talk || says_more(bar, state)) return false;
    if (ImGui::IsRectVisible({1.0F, drawn.height})) return false;
    ImGui::Dummy({1.0F, drawn.height - ImGui::GetStyle().ItemSpacing.y});
    return true;
}

void draw_progress(const Derived& derived) {
    int made = 0;
    int all = 0;
    for (const auto& bar : derived.saw) {
        for (const auto& cut : bar.cuts) {
            if (cut.state == CutState::spoiled) continue;
            ++all;
            if (cut.state == CutState::cut) ++made;
        }
    }
    draw_text(std::to_string(made) + " of " + std::to_string(all) + " cut", colour::quiet);
}

std::optional<Change> draw_saw_buttons(const Derived& derived,
                                       const model::Catalogue& catalogue,
                                       SawListState& state) {
    std::optional<Change> change;
    if (has_new_bars(derived)) {
        if (draw_button("bars are bought", {.text = "The bars are bought"}))
            state.wants_bought = true;
        draw_hint(
            "They lie at the saw: this plan stays as it is, on the screen and on paper, until you "
            "plan anew. What they cost is noted as paid, under Buy");
    }
    if (model::has_planned_cuts(*derived.project)) {
        go_on_in_line("Plan anew");
        if (draw_button("plan anew", {.text = "Plan anew"})) change = planned_anew(derived, state);
        draw_hint("All cuts that are not made are planned again, from the bars at home first");
    }
    if (has_bars_cut_up(derived)) {
        go_on_in_line("Rack the offcuts");
        if (draw_button("rack the offcuts", {.text = "Rack the offcuts"})) {
            change = offcuts_racked(derived, catalogue);
        }
        draw_hint(
            "Bars that are cut up are done with; what is worth keeping is on hand for the "
            "next job");
    }
    return change;
}

}  // namespace

std::optional<Change> draw_saw_list(const Derived& derived,
                                    const model::Catalogue& catalogue,
                                    SawListState& state,
                                    Selection& selection) {
    const ItemScope items("saw");
    if (derived.saw.empty()) {
        draw_text("Nothing is cut from bars yet.", colour::quiet);
        return std::nullopt;
    }
    const CutHands hands{derived, catalogue, state, selection};
    auto change = draw_saw_buttons(derived, catalogue, state);
    state.order =
        draw_choice_row<SawOrder>(state.order, {{SawOrder::bars, "bar by bar", "Bar by bar"},
                                                {SawOrder::stops, "stop by stop", "Stop by stop"}});
    ImGui::SameLine();
    ImGui::AlignTextToFramePadding();
    draw_progress(derived);
    const bool is_by_stops = state.order == SawOrder::stops;
    if (is_by_stops || state.troubled.bar == 0) draw_trouble(state);
    if (is_by_stops) {
        // There a spoiled piece has no line.
        if (auto one = draw_spoil_talk(hands)) change = std::move(one);
    }
    draw_rule();
    if (is_by_stops) {
        if (auto one = draw_stops(hands)) change = std::move(one);
        return change;
    }
    for (const auto& bar : derived.saw) {
        if (pass_over(bar, state)) continue;
        const float top = ImGui::GetCursorPosY();
        if (auto one = draw_one_bar(bar, hands)) change = std::move(one);
        state.heights[bar.number] = {ImGui::GetCursorPosY() - top, bar.cuts.size(), scaled(1),
                                     says_more(bar, state)};
    }
    return change;
}

}  // namespace editor

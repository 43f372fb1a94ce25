#include "editor/places/saw_stops.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "model/schedule/stop_work.h"
#include "model/schedule/tables.h"

#include <algorithm>

namespace editor {
namespace {

// "2 x A3 opp. from bar 1", "2 x A3 from bar 1, 1 of them opp.": as on paper.
std::string work_words(const model::StopWork& work) {
    const auto all = static_cast<int>(work.cuts.size());
    std::string words = std::to_string(all) + " x " + work.mark;
    if (work.opposite == all) words += " opp.";
    words += " from bar " + std::to_string(work.bar);
    if (work.opposite > 0 && work.opposite < all)
        words += ", " + std::to_string(work.opposite) + " of them opp.";
    return words + (work.is_made ? ", cut" : "");
}

std::optional<Change> draw_line(const CutHands& hands,
                                const model::StopWork& work,
                                const std::string& name) {
    std::optional<Change> change;
    bool is_made = work.is_made;
    {
        const ColourScope ink(ImGuiCol_Text, work.is_made ? colour::quiet : colour::ink);
        if (draw_check(name, is_made, work_words(work))) {
            const auto to = is_made ? model::CutState::cut : model::CutState::planned;
            change = ticked(hands.derived, hands.catalogue, hands.state, work.cuts, to);
        }
    }
    draw_hint(tick_hint(hands.derived, work.cuts, work.is_made));
    log_item(name + " is", work_words(work));
    if (work.ends == "square") return change;
    ImGui::SameLine();
    ImGui::AlignTextToFramePadding();
    draw_text(work.ends, Type::small, colour::quiet);
    draw_hint(work.ends);
    return change;
}

void draw_setting(const Derived& derived, const model::StopWork& work, bool is_done) {
    draw_text(model::length_text(*derived.project, work.length), Type::strong,
              is_done ? colour::quiet : colour::ink);
    ImGui::SameLine();
    draw_text("stop " + std::to_string(work.setting) + ", " + work.section, Type::small,
              colour::quiet);
}

}  // namespace

std::optional<Change> draw_stops(const CutHands& hands) {
    const auto& derived = hands.derived;
    const auto rows =
        model::stop_work(*derived.project, hands.catalogue, derived.resolved, derived.saw);
    if (std::ranges::all_of(rows, &model::StopWork::is_made))
        draw_text("All is cut.", colour::quiet);
    std::optional<Change> change;
    int setting = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto& row = rows[i];
        const IdScope id(static_cast<int>(i));
        if (row.setting != setting) {
            const bool is_done = std::ranges::all_of(rows, [&](const model::StopWork& it) {
                return it.setting != row.setting || it.is_made;
            });
            draw_setting(derived, row, is_done);
            setting = row.setting;
        }
        keep_first(change, draw_line(hands, row, "stop line " + std::to_string(i + 1)));
    }
    return change;
}

}  // namespace editor

#include "editor/places/consequences.h"

#include "editor/check_words.h"
#include "editor/commands.h"
#include "editor/kit/widgets.h"
#include "editor/places/bar_diagram.h"
#include "editor/places/bar_text.h"
#include "model/schedule/weight.h"

#include <algorithm>
#include <string_view>

namespace editor {
namespace {

// A large figure with a word under it; gives the room it takes.
float draw_figure(ImVec2 at, const std::string& figure, const std::string& word, ImU32 ink) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const float width = draw_text_at(on, at, figure, Type::number, ink);
    const float below =
        draw_text_at(on, {at.x, at.y + scaled(25)}, word, Type::small, colour::quiet);
    log_rectangle(
        word, {at.x, at.y, at.x + std::max(width, below), at.y + scaled(40), true, true, figure});
    return std::max(width, below) + scaled(38);
}

std::string fastener_word(const Derived& derived) {
    if (derived.fasteners.empty()) return "fasteners";
    const auto kinds = std::ranges::count_if(derived.fasteners, [](const model::FastenerRow& row) {
        return !row.fastener.starts_with("sheet pin");
    });
    if (kinds > 1) return "fasteners of " + std::to_string(kinds) + " kinds";
    return derived.fasteners.front().fastener;
}

std::string buy_word(const Derived& derived) {
    if (!derived.bars_price) {
        const auto section = section_without_price(derived);
        return section.empty() ? "bars to buy" : "bars to buy, no price of " + section;
    }
    return "bars to buy, " + price_text(*derived.bars_price, bars_currency(derived));
}

void draw_findings_figure(ImVec2 at, Desk& desk, const Derived& derived) {
    const auto& summary = derived.summary;
    const int open = summary.open();
    const ImU32 ink = derived.summary.errors > 0 ? colour::red
                      : open > 0                 ? colour::amber
                                                 : colour::ink;
    std::string word = "to mend";
    if (summary.notes > 0) {
        word += ", " + std::to_string(summary.notes) + (summary.notes == 1 ? " note" : " notes");
    }
    const float width = draw_figure(at, std::to_string(open), word, ink);
    ImGui::SetCursorScreenPos(at);
    if (ImGui::InvisibleButton("findings", {width - scaled(30), scaled(42)})) {
        run_command(desk, "prove.checks");
        desk.ui.prove.kind.reset();
    }
    log_item("findings", count_words(summary));
}

float draw_figures(const Area& area, Desk& desk, const Derived& derived) {
    ImVec2 at{area.x + scaled(24), area.y + scaled(14)};
    const auto& summary = derived.summary;
    const auto& shown = derived.project->shown;
    at.x += draw_figure(at, std::to_string(summary.pieces), "pieces", colour::ink);
    at.x += draw_figure(at, bar_text(summary.bar, shown),
                        "of bar, " + model::weight_text(summary.weight_kg, shown), colour::ink);
    at.x += draw_figure(at, bars_text(derived), buy_word(derived), colour::ink);
    at.x += draw_figure(at, std::to_string(summary.fasteners), fastener_word(derived), colour::ink);
    draw_findings_figure(at, desk, derived);
    return at.x + scaled(120);
}

// The word, then the text, small where that is what it takes to fit, and as far as there is room;
// the pointer on it shows the whole.
void draw_line(ImVec2 at, const char* word, const std::string& text, ImU32 ink, float room) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const float indent = scaled(76);
    draw_text_at(on, {at.x, at.y + scaled(1)}, word, Type::small, colour::quiet);
    const Type type = size_of_text(text, Type::text).x <= room - indent ? Type::text : Type::small;
    const std::string fitting = text_to_fit(text, type, room - indent);
    const float width = draw_text_at(on, {at.x + indent, at.y}, fitting, type, ink);
    ImGui::SetCursorScreenPos({at.x + indent, at.y});
    ImGui::Dummy({std::max(1.0F, width), scaled(18)});
    log_item(word, text);
    if (fitting != text) draw_hint(text);
}

// A click on what is next shows where it is.
void draw_way_to_next(ImVec2 at, Desk& desk, const Derived& derived, float width) {
    if (derived.summary.open() == 0) return;
    ImGui::SetCursorScreenPos(at);
    const bool clicked = ImGui::InvisibleButton("next", {std::max(1.0F, width), scaled(20)});
    log_item("show next", next_text(derived));
    draw_hint(next_text(derived) + ". Click to see where");
    if (!clicked) return;
    const auto& group = derived.finding_groups.front();
    run_command(desk, "prove.checks");
    desk.ui.prove.kind = kind_of(derived.findings[group.findings[0]]);
    desk.ui.prove.findings = {};
    desk.ui.selection = selection_of_subjects(*derived.project, derived.resolved, group.concerns);
}

void draw_lines(const Area& area, Desk& desk, const Derived& derived, float width) {
    ImVec2 at{area.x + scaled(24), area.y + scaled(72)};
    const auto line = [&](const char* word, const std::string& text, ImU32 ink) {
        if (text.empty()) return;
        draw_line(at, word, text, ink, width);
        at.y += scaled(23);
    };
    const auto& notice = desk.ui.notice;
    line("Last edit", last_edit_text(desk), colour::ink);
    if (notice) {
        line(notice->is_trouble ? "Refused" : "Done", notice->text,
             notice->is_trouble ? colour::red : colour::ink);
    } else {
        const ImVec2 here = at;
        line("Next", next_text(derived), colour::ink);
        draw_way_to_next(here, desk, derived, width);
    }
}

void draw_bars(const Area& area, const Derived& derived) {
    auto runs = bar_runs(derived);
    std::stable_partition(runs.begin(), runs.end(), [&](const BarRun& run) {
        return !derived.bars[run.first].is_offcut();  // what is bought comes first
    });
    engine::Length longest;
    for (const auto& row : derived.bars) longest = std::max(longest, row.bar_length);
    const auto most = static_cast<std::size_t>((area.height - scaled(24)) / scaled(29));
    float y = area.y + scaled(14);
    for (std::size_t i = 0; i < runs.size(); ++i) {
        const bool is_last = i + 1 == most && runs.size() > most;
        if (i == most) break;
        if (is_last) {
            draw_text_at(*ImGui::GetWindowDrawList(), {area.x, y},
                         "and " + std::to_string(runs.size() - i) + " bars more, under Buy",
                         Type::small, colour::quiet);
            break;
        }
        draw_bar(*ImGui::GetWindowDrawList(), {area.x, y}, {area.width - scaled(60), scaled(19)},
                 derived, runs[i], longest);
        y += scaled(29);
    }
}

// What is not done while such a thing is open.
std::string_view waiting_for(model::CheckKind kind) {
    switch (kind) {
        case model::CheckKind::measured:
            return "the room can be trusted";
        case model::CheckKind::stated:
            return "the rest follows";
        case model::CheckKind::apart:
        case model::CheckKind::ends:
        case model::CheckKind::joints:
        case model::CheckKind::fasteners:
        case model::CheckKind::setting:
            return "the drilling schedule is whole";
        case model::CheckKind::panels:
        case model::CheckKind::feet:
            return "the cut list is whole";
        case model::CheckKind::room:
        case model::CheckKind::drawers:
        case model::CheckKind::openings:
            return "the fit is proved";
        case model::CheckKind::bars:
            return "all can be bought";
    }
    return "";
}

}  // namespace

std::string last_edit_text(Desk& desk) {
    if (!desk.history.can_undo()) return {};
    const std::string& label = desk.history.undo_label();
    const std::string& change = last_change_text(desk);
    return change.empty() ? label : label + ": " + change;
}

std::string next_text(const Derived& derived) {
    if (derived.project->frames.empty()) return "start a frame: Frame, New box frame";
    if (derived.resolved.pieces.empty() && derived.summary.open() == 0)
        return "put members on the lines of the planes: Frame, Put members";
    if (derived.summary.open() == 0) {
        return derived.project->room.empty()
                   ? "export the schedules; or measure the room, so that it is proved to fit"
                   : "export the schedules, or change a dimension";
    }
    const auto& group = derived.finding_groups.front();  // the worst first
    const auto kind = kind_of(derived.findings[group.findings[0]]);
    const auto& row = model::row_of(kind);
    const int count = count_of(derived, kind).open();
    const std::string where = where_words(group, derived.findings);
    return (count == 1 ? "one " + std::string(row.one)
                       : std::to_string(count) + " " + std::string(row.many)) +
           " before " + std::string(waiting_for(kind)) + (where.empty() ? "" : ": " + where);
}

void draw_consequences(const Area& area, Desk& desk, const Derived& derived) {
    const StyleScope no_padding(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
    const PanelScope panel("Consequences", area,
                           ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    ImGui::GetWindowDrawList()->AddLine({area.x, area.y}, {area.x + area.width, area.y},
                                        colour::line, scaled(1));
    if (derived.project->frames.empty()) {
        draw_lines({area.x, area.y - scaled(50), area.width, area.height}, desk, derived,
                   area.width);
        return;
    }
    const float taken = draw_figures(area, desk, derived) - area.x;
    const float left = std::max(taken, area.width * 0.6F);
    const bool has_bars = area.width - left > scaled(260);
    draw_lines(area, desk, derived, (has_bars ? left : area.width) - scaled(40));
    if (has_bars) {
        draw_bars({area.x + left, area.y, area.width - left - scaled(10), area.height}, derived);
    }
}

}  // namespace editor

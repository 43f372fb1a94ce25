#include "editor/places/sorted_table.h"

#include "editor/kit/term.h"
#include "editor/kit/widgets.h"

#include <imgui_internal.h>

#include <algorithm>
#include <utility>

namespace editor {
namespace {

// What the heads say now, whatever the order was before: the table may have come back.
void read_order(TableOrder& order) {
    auto* specs = ImGui::TableGetSortSpecs();
    if (specs == nullptr) return;
    specs->SpecsDirty = false;
    order.column.reset();
    if (specs->SpecsCount == 0 || specs->Specs[0].ColumnUserID == 0) return;
    order.column = specs->Specs[0].ColumnUserID - 1;
    order.is_downward = specs->Specs[0].SortDirection == ImGuiSortDirection_Descending;
}

// By the keyboard. A narrow table does not show every column: then the next one that it shows.
void press_head(TableOrder& order) {
    const auto wanted = std::exchange(order.wanted, std::nullopt);
    if (!wanted) return;
    const int count = ImGui::TableGetColumnCount();
    const auto id_of = [](int i) { return ImGui::GetCurrentTable()->Columns[i].UserID; };
    int pressed = -1;
    for (int i = 0; i < count; ++i) {
        const ImGuiID id = id_of(i);
        if (wanted->column ? id > *wanted->column : order.column && id == *order.column + 1) {
            if (pressed < 0 || id < id_of(pressed)) pressed = i;
        }
    }
    const bool is_sorted = wanted->column && pressed >= 0;
    for (int i = 0; i < count && pressed < 0; ++i) {
        if (order.column && id_of(i) == *order.column + 1) pressed = i;
    }
    if (pressed < 0) return;
    ImGui::TableSetColumnSortDirection(pressed,
                                       !is_sorted            ? ImGuiSortDirection_None
                                       : wanted->is_downward ? ImGuiSortDirection_Descending
                                                             : ImGuiSortDirection_Ascending,
                                       false);
}

void choose(TableOrder& order, Selection& selection, const LineHands& hands, std::size_t line) {
    const ImGuiIO& io = ImGui::GetIO();
    const Selection one = hands.chosen_by(line);
    const auto place_of = [&](std::size_t of) { return std::ranges::find(order.shown, of); };
    if (io.KeyShift && order.anchor && place_of(*order.anchor) != order.shown.end()) {
        auto from = place_of(*order.anchor);
        auto to = place_of(line);
        if (to < from) std::swap(from, to);
        for (auto at = from; at <= to; ++at)
            selection = with_added(std::move(selection), hands.chosen_by(*at));
        return;
    }
    if (io.KeyShift || io.KeyCtrl) {
        const bool takes_away = io.KeyCtrl && hands.is_marked(line);
        selection = takes_away ? with_removed(std::move(selection), one)
                               : with_added(std::move(selection), one);
    } else {
        selection = one;
    }
    order.anchor = line;
}

// Where the first line of what was chosen elsewhere stands.
std::optional<int> place_to_see(const TableOrder& order,
                                const Selection& selection,
                                const LineHands& hands) {
    if (order.seen == selection) return std::nullopt;
    auto at = std::ranges::find_if(order.shown, hands.is_marked);
    if (order.anchor && hands.is_marked(*order.anchor)) {
        const auto anchor = std::ranges::find(order.shown, *order.anchor);
        if (anchor != order.shown.end()) at = anchor;
    }
    if (at == order.shown.end()) return std::nullopt;
    return static_cast<int>(at - order.shown.begin());
}

// The line that so many stand below the one chosen last, or the first one; gives where it stands.
std::optional<int> choose_by_keys(TableOrder& order, Selection& selection, const LineHands& hands) {
    const int step = std::exchange(order.step, 0);
    if (step == 0 || order.shown.empty()) return std::nullopt;
    auto at = order.anchor ? std::ranges::find(order.shown, *order.anchor) : order.shown.end();
    if (at == order.shown.end()) at = std::ranges::find_if(order.shown, hands.is_marked);
    const auto last = static_cast<std::ptrdiff_t>(order.shown.size()) - 1;
    const auto next = std::clamp<std::ptrdiff_t>(
        at == order.shown.end() ? 0 : at - order.shown.begin() + step, 0, last);
    order.anchor = order.shown[static_cast<std::size_t>(next)];
    selection = hands.chosen_by(*order.anchor);
    return static_cast<int>(next);
}

std::optional<std::size_t> draw_seen(TableOrder& order,
                                     const LineHands& hands,
                                     std::optional<int> to_see) {
    std::optional<std::size_t> clicked;
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(order.shown.size()));
    if (to_see) clipper.ForceDisplayRangeByIndices(*to_see, *to_see + 1);
    while (clipper.Step()) {
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
            const auto at = static_cast<std::size_t>(i);
            LineAt line{.line = order.shown[at], .before = {}, .is_marked = false};
            // The clipper also draws line 0 alone, to measure it.
            const bool is_first = i == 0 || (i == clipper.DisplayStart && i > 1);
            if (!is_first) line.before = order.shown[at - 1];
            line.is_marked = hands.is_marked(line.line);
            const IdScope id(static_cast<int>(line.line));
            if (hands.draw(line)) clicked = line.line;
            if (to_see == i && !ImGui::IsItemVisible()) ImGui::SetScrollHereY(0.5F);
        }
    }
    return clicked;
}

}  // namespace

void draw_search(std::string_view name, TableOrder& order) {
    const bool is_all = order.shown.size() == order.lines.size();
    const std::string all = std::to_string(order.lines.size());
    const std::string count = is_all ? all + (order.lines.size() == 1 ? " line" : " lines")
                                     : std::to_string(order.shown.size()) + " of " + all;
    const float beside = size_of_text("0000 of 0000", Type::small).x + scaled(10);
    const float width = std::max(scaled(80), ImGui::GetContentRegionAvail().x - beside);
    draw_field(name, order.search,
               {.hint = "find: words of any column",
                .width = width,
                .wants_focus = std::exchange(order.wants_search, false),
                .nudged = {}});
    ImGui::SameLine(0, scaled(10));
    ImGui::AlignTextToFramePadding();
    draw_text(count, Type::small, is_all ? colour::quiet : colour::dye);
    log_item(std::string(name) + " count", count);
}

void draw_heads(TableOrder& order) {
    ImGui::TableSetupScrollFreeze(0, 1);
    press_head(order);
    const FontScope small(Type::small);
    const ColourScope quiet(ImGuiCol_Text, colour::quiet);
    ImGui::TableNextRow(ImGuiTableRowFlags_Headers);
    for (int i = 0; i < ImGui::TableGetColumnCount(); ++i) {
        if (!ImGui::TableSetColumnIndex(i)) continue;
        const char* name = ImGui::TableGetColumnName(i);
        const IdScope id(i);
        ImGui::TableHeader(name);
        explain_term(name);
        const auto& column = ImGui::GetCurrentTable()->Columns[i];
        const bool is_by = order.column && column.UserID == *order.column + 1;
        log_item("head " + std::string(name), !is_by              ? ""
                                              : order.is_downward ? "downward"
                                                                  : "upward");
    }
    read_order(order);
}

void draw_lines(TableOrder& order, Selection& selection, const LineHands& hands) {
    put_in_order(order);
    auto to_see = choose_by_keys(order, selection, hands);
    if (!to_see) to_see = place_to_see(order, selection, hands);
    const auto clicked = draw_seen(order, hands, to_see);
    if (clicked) choose(order, selection, hands, *clicked);
    order.seen = selection;
}

}  // namespace editor

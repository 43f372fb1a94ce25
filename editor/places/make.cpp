#include "editor/places/make.h"

#include "editor/bench_desk.h"
#include "editor/kit/widgets.h"
#include "editor/places/assembly_list.h"
#include "editor/places/bench.h"
#include "editor/places/cautions.h"
#include "editor/places/choice_row.h"
#include "editor/places/make_tables.h"
#include "editor/places/paper.h"
#include "editor/places/saw_place.h"

#include <algorithm>
#include <string>
#include <vector>

namespace editor {
namespace {

using model::Index;

std::optional<Change> draw_table(const Derived& derived,
                                 const model::Catalogue& catalogue,
                                 const std::vector<JoinedLine>& joined,
                                 MakeState& state,
                                 Selection& selection) {
    const auto chosen = selected_pieces(*derived.project, derived.resolved, selection);
    switch (state.table) {
        case ShopTable::cuts:
            draw_cut_table(derived, chosen, state.cuts, selection);
            break;
        case ShopTable::saw:
            return draw_saw_place(derived, catalogue, state, selection);
        case ShopTable::drills:
            draw_drill_table(derived, chosen, state.drills, selection);
            break;
        case ShopTable::fasteners:
            draw_joined_table(derived, joined, chosen, state.fasteners, selection);
            break;
        case ShopTable::assembly:
            draw_assembly_list(derived, catalogue, state, selection);
            break;
        case ShopTable::bench:
            return draw_bench(derived, catalogue, state, selection);
        case ShopTable::paper:
            draw_paper(derived, state);
            break;
    }
    return std::nullopt;
}

Work work_at_bench(const BenchDesk* bench) {
    if (bench == nullptr) return Work::cutting;
    switch (bench->work) {
        case model::BenchWork::cut:
            return Work::cutting;
        case model::BenchWork::deburr:
            return Work::deburring;
        case model::BenchWork::drill:
            return Work::drilling;
        case model::BenchWork::fit:
        case model::BenchWork::set:
            break;
    }
    return Work::riveting;
}

Work work_of(const MakeState& state) {
    switch (state.table) {
        case ShopTable::bench:
            return work_at_bench(state.bench.get());
        case ShopTable::cuts:
        case ShopTable::saw:
            return Work::cutting;
        case ShopTable::drills:
            return Work::drilling;
        case ShopTable::fasteners:
        case ShopTable::assembly:
        case ShopTable::paper:
            break;
    }
    return Work::riveting;
}

}  // namespace

std::string mark_name(const Derived& derived, Index mark) {
    return mark < derived.resolved.marks.size() ? derived.resolved.marks[mark].name : "";
}

std::vector<Index> pieces_of(const Derived& derived, Index mark, model::Hand hand) {
    std::vector<Index> pieces;
    for (Index i = 0; i < derived.resolved.pieces.size(); ++i) {
        const auto& piece = derived.resolved.pieces[i];
        if (piece.mark == mark && piece.hand == hand) pieces.push_back(i);
    }
    return pieces;
}

bool is_chosen(const std::vector<Index>& chosen,
               const Derived& derived,
               Index mark,
               model::Hand hand) {
    return std::any_of(chosen.begin(), chosen.end(), [&](Index i) {
        return derived.resolved.pieces[i].mark == mark && derived.resolved.pieces[i].hand == hand;
    });
}

bool draw_line_start(const std::string& name, const std::string& text, bool chosen) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const bool clicked = draw_row(name, " ", chosen, true).clicked;
    ImGui::SameLine(0, 0);
    draw_text(text, Type::strong);
    return clicked;
}

bool is_narrow(std::span<const ColumnWidth* const> columns, float least_room) {
    const float padding = 2 * ImGui::GetStyle().CellPadding.x + scaled(2);
    float taken = padding;
    for (const auto* column : columns) taken += column->width() + padding;
    return ImGui::GetContentRegionAvail().x - taken < scaled(least_room);
}

void set_up_fixed(const char* name,
                  const ColumnWidth& above,
                  const ColumnWidth& below,
                  unsigned id) {
    const float arrow = size_of_text(name, Type::small).x + scaled(14);  // see ColumnWidth::set_up
    ImGui::TableSetupColumn(name, ImGuiTableColumnFlags_WidthFixed,
                            std::max({arrow, above.width(), below.width()}) + scaled(2), id);
}

std::optional<Change> draw_make(const Area& area,
                                const Derived& derived,
                                const model::Catalogue& catalogue,
                                MakeState& state,
                                Selection& selection) {
    const PanelScope panel("Make", area);
    const auto text = [](const char* name, int count) {
        return name + (" \xC2\xB7 " + std::to_string(count));
    };
    state.table = draw_choice_row<ShopTable>(
        state.table,
        {{ShopTable::cuts, "Cut list", text("Cut list", derived.summary.pieces)},
         {ShopTable::saw, "Saw", text("Saw", static_cast<int>(derived.saw.size()))},
         {ShopTable::drills, "Drilling", text("Drilling", static_cast<int>(derived.drills.size()))},
         {ShopTable::fasteners, "Fasteners", text("Fasteners", derived.summary.fasteners)},
         {ShopTable::assembly, "Assembly", "Assembly"},
         {ShopTable::bench, "Bench", "Bench"},
         {ShopTable::paper, "Paper", "Paper"}});
    if (state.table != ShopTable::paper) draw_caution(work_of(state));
    return draw_table(derived, catalogue, joined_lines(state.joined, derived, catalogue), state,
                      selection);
}

}  // namespace editor

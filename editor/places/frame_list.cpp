#include "editor/places/frame_list.h"

#include "editor/by_name.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/bar_text.h"
#include "editor/places/node_bar_list.h"
#include "editor/places/panel_list.h"
#include "editor/places/section_choice.h"
#include "editor/places/table_columns.h"

#include <algorithm>

namespace editor {
namespace {

using model::Index;

// What one frame takes of one stock.
struct StockUse {
    std::string stock;
    std::string section;
    std::vector<std::string> members;
    std::vector<std::string> node_bars;  // braces and leaning members
    std::vector<Index> pieces;
    engine::Length bar;
};

StockUse& use_of(std::vector<StockUse>& uses, const std::string& stock) {
    const auto at = std::find_if(uses.begin(), uses.end(),
                                 [&](const StockUse& use) { return use.stock == stock; });
    if (at != uses.end()) return *at;
    uses.push_back({.stock = stock});
    return uses.back();
}

std::vector<StockUse> uses_in(const Derived& derived, Index frame) {
    const auto& project = *derived.project;
    std::vector<StockUse> uses;
    for (const auto& member : project.frames[frame].members) {
        use_of(uses, member.stock).members.push_back(member.name);
    }
    for (const auto& brace : project.frames[frame].diagonals) {
        use_of(uses, brace.stock).node_bars.push_back(brace.name);
    }
    for (const auto& leaning : project.frames[frame].leaning) {
        use_of(uses, leaning.stock).node_bars.push_back(leaning.name);
    }
    for (Index i = 0; i < derived.resolved.pieces.size(); ++i) {
        const auto& piece = derived.resolved.pieces[i];
        if (piece.frame != frame || piece.stock >= project.stock.size()) continue;
        auto& use = use_of(uses, project.stock[piece.stock].name);
        use.pieces.push_back(i);
        use.bar += engine::Length::from_nm(piece.length);
    }
    for (auto& use : uses) {
        if (const auto* stock = by_name(project.stock, use.stock)) use.section = stock->section;
    }
    return uses;
}

float height_of_use() { return ImGui::GetFrameHeight() + 2 * ImGui::GetStyle().CellPadding.y; }

std::string count_of(const StockUse& use) { return std::to_string(use.pieces.size()) + " pcs"; }

void set_up_columns(const std::vector<StockUse>& uses, const Derived& derived) {
    ColumnWidth pieces("");
    ColumnWidth bar("");
    for (const auto& use : uses) {
        pieces.add(count_of(use));
        bar.add(bar_text(use.bar, derived.project->shown));
    }
    ImGui::TableSetupColumn("section", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("pieces", ImGuiTableColumnFlags_WidthFixed, pieces.width());
    ImGui::TableSetupColumn("bar", ImGuiTableColumnFlags_WidthFixed, bar.width());
}

std::optional<Change> draw_use(const StockUse& use,
                               const model::Frame& frame,
                               const Derived& derived,
                               const model::Catalogue& catalogue,
                               Selection& selection,
                               SectionTyping& filter) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const std::string current = use.section.empty() ? use.stock : use.section;
    const std::string name = "stock " + frame.name + " " + use.stock;
    const float width = ImGui::GetContentRegionAvail().x;
    std::optional<std::string> section;
    if (use.members.empty() && use.node_bars.empty()) {
        // What a recipe makes of it follows its joint.
        ImGui::AlignTextToFramePadding();
        draw_text(text_to_fit(current, Type::text, width));
        draw_hint(current);
    } else {
        section = draw_section_choice(name, current, catalogue, filter, width);
    }
    ImGui::TableNextColumn();
    ImGui::AlignTextToFramePadding();
    if (draw_row("pieces of " + use.stock, count_of(use), false).clicked) {
        selection = selection_of(*derived.project, derived.resolved, use.pieces);
    }
    draw_hint("Select these pieces");
    ImGui::TableNextColumn();
    ImGui::AlignTextToFramePadding();
    draw_text_right(bar_text(use.bar, derived.project->shown));
    if (!section || *section == use.section) return std::nullopt;
    return section_change(derived, catalogue, frame.name, use.members, *section, use.node_bars);
}

std::optional<Change> draw_uses(const Derived& derived,
                                Index frame,
                                const model::Catalogue& catalogue,
                                Selection& selection,
                                SectionTyping& filter) {
    std::optional<Change> change;
    const TableScope table("uses", 3);
    if (!table) return change;
    const auto uses = uses_in(derived, frame);
    set_up_columns(uses, derived);
    for (const auto& use : uses) {
        keep_first(change, draw_use(use, derived.project->frames[frame], derived, catalogue,
                                    selection, filter));
    }
    return change;
}

void draw_new_things(const Derived& derived,
                     const model::Frame& frame,
                     const model::Catalogue& catalogue,
                     const Selection& selection,
                     Dialog& dialog) {
    if (draw_button("New panel in " + frame.name,
                    {.text = "+ panel", .weight = Weight::link, .enabled = !frame.bays.empty()})) {
        dialog = new_panel_form(derived, frame.name);
    }
    draw_hint(frame.bays.empty() ? "A panel closes a side of a bay, and this frame has no bays"
                                 : "Sheet on one side of a bay");
    const bool has_members = !frame.members.empty();
    ImGui::SameLine();
    if (draw_button("New brace in " + frame.name,
                    {.text = "+ brace", .weight = Weight::link, .enabled = has_members})) {
        dialog = new_node_bar_form<model::Diagonal>(derived, catalogue, frame.name, selection);
    }
    draw_hint(has_members ? "Flat bar across a face, from corner to corner; choose two members "
                            "first and it begins at theirs"
                          : "A brace lies against members, and this frame has none");
    ImGui::SameLine();
    if (draw_button("New leaning member in " + frame.name,
                    {.text = "+ leaning", .weight = Weight::link, .enabled = has_members})) {
        dialog = new_node_bar_form<model::Leaning>(derived, catalogue, frame.name, selection);
    }
    draw_hint(has_members ? "Angle that leans with the wall, from node to node of a face; choose "
                            "two members first and it begins at theirs"
                          : "A leaning member is held by level ones, and this frame has none");
}

}  // namespace

std::optional<Change> draw_frame_list(const Derived& derived,
                                      const model::Catalogue& catalogue,
                                      Selection& selection,
                                      SectionTyping& filter,
                                      Dialog& dialog) {
    std::optional<Change> change;
    for (Index f = 0; f < derived.project->frames.size(); ++f) {
        const auto& frame = derived.project->frames[f];
        const IdScope id(static_cast<int>(f));
        draw_text(frame.name, Type::strong);
        keep_first(change, draw_uses(derived, f, catalogue, selection, filter));
        draw_panel_list(derived, f, selection, dialog);
        draw_node_bar_list(derived, f, selection, dialog);
        draw_new_things(derived, frame, catalogue, selection, dialog);
    }
    return change;
}

float height_of_first_stock() {
    return size_of_text("Frame", Type::strong).y + ImGui::GetStyle().ItemSpacing.y +
           height_of_use();
}

float height_of_frames(const Derived& derived, float width) {
    const float row = height_of_use();
    float height = ImGui::GetStyle().ItemSpacing.y;
    for (Index f = 0; f < derived.project->frames.size(); ++f) {
        height += ImGui::GetTextLineHeightWithSpacing() + ImGui::GetStyle().ItemSpacing.y +
                  row * static_cast<float>(uses_in(derived, f).size()) +
                  height_of_panels(derived, f, width) + height_of_node_bars(derived, f, width) +
                  ImGui::GetFrameHeightWithSpacing();
    }
    return height;
}

}  // namespace editor

#include "editor/places/panel_list.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/panel_facts.h"
#include "editor/places/table_columns.h"

#include <algorithm>

namespace editor {
namespace {

std::string size_words(const Derived& derived,
                       const model::Frame& frame,
                       const model::Panel& panel) {
    const auto size = sheet_size_of(derived, frame.name, panel.name);
    return size ? face_size_text(*size, derived.project->shown) : "not made";
}

// What stands below a panel: the way through a door, and what there is to mend.
struct PanelLine {
    std::string text;
    ImU32 packed = colour::quiet;
};

std::vector<PanelLine> lines_below(const Derived& derived,
                                   const model::Frame& frame,
                                   const model::Panel& panel) {
    std::vector<PanelLine> lines;
    if (const auto opening = clear_opening_of(derived, frame.name, panel.name)) {
        lines.push_back({"clear opening " + face_size_text(*opening, derived.project->shown)});
    }
    for (const auto* finding : findings_of_panel(derived, frame.name, panel.name)) {
        if (finding->severity == model::Severity::note) continue;  // in the list of findings
        const bool is_error = finding->severity == model::Severity::error;
        lines.push_back({finding->what, is_error ? colour::red : colour::amber});
    }
    return lines;
}

void draw_name(const model::Frame& frame, const model::Panel& panel, Dialog& dialog) {
    const float width = ImGui::GetContentRegionAvail().x;
    if (draw_button("panel " + panel.name,
                    {.text = text_to_fit(panel.name, Type::text, width - scaled(10)),
                     .weight = Weight::link})) {
        dialog = panel_form(frame.name, panel);
    }
    draw_hint("Change " + panel.name + ", its cut-outs or remove it");
}

void draw_panel(const Derived& derived,
                const model::Frame& frame,
                const model::Panel& panel,
                Selection& selection,
                Dialog& dialog) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    draw_name(frame, panel, dialog);
    ImGui::TableNextColumn();
    ImGui::AlignTextToFramePadding();
    const auto piece = panel_piece(derived, frame.name, panel.name);
    const auto size = size_words(derived, frame, panel);
    if (draw_row("size of " + panel.name, size, false).clicked && piece) {
        selection = selection_of(*derived.project, derived.resolved, {*piece});
    }
    log_item("size of " + panel.name, size);
    draw_hint("Select this panel");
    ImGui::TableNextColumn();
    if (draw_button("vents of " + panel.name,
                    {.text = "vents", .weight = Weight::link, .enabled = piece.has_value()})) {
        dialog = vent_form(derived, frame.name, panel.name);
    }
    draw_hint("Size openings for air and put them into this panel");
}

void set_up_columns(const Derived& derived, const model::Frame& frame) {
    ColumnWidth size("");
    for (const auto& panel : frame.panels) size.add(size_words(derived, frame, panel));
    ImGui::TableSetupColumn("panel", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("size", ImGuiTableColumnFlags_WidthFixed, size.width());
    ImGui::TableSetupColumn(
        "vents", ImGuiTableColumnFlags_WidthFixed,
        size_of_text("vents", Type::text).x + 2 * ImGui::GetStyle().FramePadding.x);
}

}  // namespace

void draw_panel_list(const Derived& derived,
                     model::Index index,
                     Selection& selection,
                     Dialog& dialog) {
    const auto& frame = derived.project->frames[index];
    for (const auto& panel : frame.panels) {
        const IdScope id(panel.name.c_str());
        {
            const TableScope table("panel", 3);
            if (!table) continue;
            set_up_columns(derived, frame);
            draw_panel(derived, frame, panel, selection, dialog);
        }
        for (const auto& line : lines_below(derived, frame, panel)) {
            draw_wrapped(line.text, Type::small, line.packed);
            log_item("of " + panel.name, line.text);
        }
    }
}

float height_of_panels(const Derived& derived, model::Index index, float width) {
    const auto& style = ImGui::GetStyle();
    const float row = ImGui::GetFrameHeight() + 2 * style.CellPadding.y + style.ItemSpacing.y;
    const auto& frame = derived.project->frames[index];
    float height = 0.0F;
    for (const auto& panel : frame.panels) {
        height += row;
        const ImFont* small = font(Type::small);
        for (const auto& line : lines_below(derived, frame, panel)) {
            height += small->CalcTextSizeA(small->FontSize, 1.0e6F, width, line.text.c_str()).y +
                      style.ItemSpacing.y;
        }
    }
    return height;
}

}  // namespace editor

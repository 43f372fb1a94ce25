#include "editor/places/node_bar_list.h"

#include "editor/findings_about.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/node_bars.h"
#include "editor/places/table_columns.h"

namespace editor {
namespace {

template <class Bar>
std::optional<model::Index> its_piece(const Derived& derived,
                                      const model::Frame& frame,
                                      const Bar& bar) {
    return piece_of(*derived.project, derived.resolved, subject_of(frame.name, bar));
}

template <class Bar>
std::string its_size(const Derived& derived, const model::Frame& frame, const Bar& bar) {
    const auto piece = its_piece(derived, frame, bar);
    if (!piece) return "not made";
    return size_words(derived.resolved.pieces[*piece], derived.project->shown);
}

template <class Bar>
std::vector<const model::Finding*> to_mend(const Derived& derived,
                                           const model::Frame& frame,
                                           const Bar& bar) {
    return to_mend_about(derived.findings, subject_of(frame.name, bar));
}

template <class Bar>
void draw_name(const model::Frame& frame, const Bar& bar, Dialog& dialog) {
    const float width = ImGui::GetContentRegionAvail().x;
    if (draw_button(std::string(NodeBarKind<Bar>::word) + " " + bar.name,
                    {.text = text_to_fit(bar.name, Type::text, width - scaled(10)),
                     .weight = Weight::link})) {
        dialog = node_bar_form(frame.name, bar);
    }
    draw_hint("Change " + bar.name + " or remove it");
}

template <class Bar>
void draw_bar(const Derived& derived,
              const model::Frame& frame,
              const Bar& bar,
              Selection& selection,
              Dialog& dialog) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    draw_name(frame, bar, dialog);
    ImGui::TableNextColumn();
    ImGui::AlignTextToFramePadding();
    const auto size = its_size(derived, frame, bar);
    if (draw_row("length of " + bar.name, size, false).clicked) {
        selection = selection_of_subjects(*derived.project, derived.resolved,
                                          {subject_of(frame.name, bar)});
    }
    log_item("length of " + bar.name, size);
    draw_hint("Select this " + std::string(NodeBarKind<Bar>::word));
}

template <class Bar>
void set_up_columns(const Derived& derived, const model::Frame& frame) {
    ColumnWidth size("");
    for (const auto& bar : NodeBarKind<Bar>::all(frame)) size.add(its_size(derived, frame, bar));
    ImGui::TableSetupColumn("name", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("length", ImGuiTableColumnFlags_WidthFixed, size.width());
}

template <class Bar>
void draw_list(const Derived& derived,
               const model::Frame& frame,
               Selection& selection,
               Dialog& dialog) {
    const IdScope bars(NodeBarKind<Bar>::word);  // a panel may have the same name
    for (const auto& bar : NodeBarKind<Bar>::all(frame)) {
        const IdScope id(bar.name.c_str());
        {
            const TableScope table("bar", 2);
            if (!table) continue;
            set_up_columns<Bar>(derived, frame);
            draw_bar(derived, frame, bar, selection, dialog);
        }
        for (const auto* finding : to_mend(derived, frame, bar)) {
            const bool is_error = finding->severity == model::Severity::error;
            draw_wrapped(finding->what, Type::small, is_error ? colour::red : colour::amber);
            log_item("of " + bar.name + ": " + finding->code, finding->what);
        }
    }
}

template <class Bar>
float height_of(const Derived& derived, const model::Frame& frame, float width) {
    const auto& style = ImGui::GetStyle();
    const ImFont* small = font(Type::small);
    float height = 0.0F;
    for (const auto& bar : NodeBarKind<Bar>::all(frame)) {
        height += ImGui::GetFrameHeight() + 2 * style.CellPadding.y + style.ItemSpacing.y;
        for (const auto* finding : to_mend(derived, frame, bar)) {
            const char* text = finding->what.c_str();
            height +=
                small->CalcTextSizeA(small->FontSize, 1.0e6F, width, text).y + style.ItemSpacing.y;
        }
    }
    return height;
}

}  // namespace

void draw_node_bar_list(const Derived& derived,
                        model::Index index,
                        Selection& selection,
                        Dialog& dialog) {
    const auto& frame = derived.project->frames[index];
    draw_list<model::Leaning>(derived, frame, selection, dialog);
    draw_list<model::Diagonal>(derived, frame, selection, dialog);
}

float height_of_node_bars(const Derived& derived, model::Index index, float width) {
    const auto& frame = derived.project->frames[index];
    return height_of<model::Leaning>(derived, frame, width) +
           height_of<model::Diagonal>(derived, frame, width);
}

}  // namespace editor

#include "editor/places/brace_list.h"

#include "editor/brace_facts.h"
#include "editor/findings_about.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/table_columns.h"

#include <algorithm>

namespace editor {
namespace {

std::optional<model::Index> piece_of(const Derived& derived,
                                     const model::Frame& frame,
                                     const model::Diagonal& brace) {
    return brace_piece(*derived.project, derived.resolved, frame.name, brace.name);
}

std::string size_words(const Derived& derived,
                       const model::Frame& frame,
                       const model::Diagonal& brace) {
    const auto piece = piece_of(derived, frame, brace);
    if (!piece) return "not made";
    return length_text(derived.resolved.pieces[*piece], derived.project->shown) + " long";
}

std::vector<const model::Finding*> to_mend(const Derived& derived,
                                           const model::Frame& frame,
                                           const model::Diagonal& brace) {
    return to_mend_about(derived.findings, subject_of_brace(frame.name, brace.name));
}

void draw_name(const model::Frame& frame, const model::Diagonal& brace, Dialog& dialog) {
    const float width = ImGui::GetContentRegionAvail().x;
    if (draw_button("brace " + brace.name,
                    {.text = text_to_fit(brace.name, Type::text, width - scaled(10)),
                     .weight = Weight::link})) {
        dialog = brace_form(frame.name, brace);
    }
    draw_hint("Change " + brace.name + " or remove it");
}

void draw_brace(const Derived& derived,
                const model::Frame& frame,
                const model::Diagonal& brace,
                Selection& selection,
                Dialog& dialog) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    draw_name(frame, brace, dialog);
    ImGui::TableNextColumn();
    ImGui::AlignTextToFramePadding();
    const auto size = size_words(derived, frame, brace);
    const auto subject = subject_of_brace(frame.name, brace.name);
    if (draw_row("length of " + brace.name, size, false).clicked) {
        selection = selection_of_subjects(*derived.project, derived.resolved, {subject});
    }
    log_item("length of " + brace.name, size);
    draw_hint("Select this brace");
}

void set_up_columns(const Derived& derived, const model::Frame& frame) {
    ColumnWidth size("");
    for (const auto& brace : frame.diagonals) size.add(size_words(derived, frame, brace));
    ImGui::TableSetupColumn("brace", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("length", ImGuiTableColumnFlags_WidthFixed, size.width());
}

}  // namespace

void draw_brace_list(const Derived& derived,
                     model::Index index,
                     Selection& selection,
                     Dialog& dialog) {
    const auto& frame = derived.project->frames[index];
    const IdScope braces("braces");  // a panel may have the same name
    for (const auto& brace : frame.diagonals) {
        const IdScope id(brace.name.c_str());
        {
            const TableScope table("brace", 2);
            if (!table) continue;
            set_up_columns(derived, frame);
            draw_brace(derived, frame, brace, selection, dialog);
        }
        for (const auto* finding : to_mend(derived, frame, brace)) {
            const bool is_error = finding->severity == model::Severity::error;
            draw_wrapped(finding->what, Type::small, is_error ? colour::red : colour::amber);
            log_item("of " + brace.name + ": " + finding->code, finding->what);
        }
    }
}

float height_of_braces(const Derived& derived, model::Index index, float width) {
    const auto& style = ImGui::GetStyle();
    const ImFont* small = font(Type::small);
    const auto& frame = derived.project->frames[index];
    float height = 0.0F;
    for (const auto& brace : frame.diagonals) {
        height += ImGui::GetFrameHeight() + 2 * style.CellPadding.y + style.ItemSpacing.y;
        for (const auto* finding : to_mend(derived, frame, brace)) {
            const char* text = finding->what.c_str();
            height +=
                small->CalcTextSizeA(small->FontSize, 1.0e6F, width, text).y + style.ItemSpacing.y;
        }
    }
    return height;
}

}  // namespace editor

#include "editor/kit/widgets.h"
#include "editor/places/finding_list.h"
#include "editor/places/prove_sheets.h"
#include "model/schedule/tables.h"

#include <string>

namespace editor {
namespace {

const std::vector<OpeningVerdict>& verdicts_of(const Derived& derived, ProveState& state) {
    auto& memo = state.verdicts;
    const auto of = worked_out_of(derived);
    if (memo.of != of) memo = {of, 0.0, opening_verdicts(derived)};
    return memo.rows;
}

std::string length_words(model::Nm length, const Derived& derived) {
    return model::length_text(*derived.project, engine::Length::from_nm(length));
}

void draw_gap(model::Nm gap, const Derived& derived) {
    ImGui::TableNextColumn();
    draw_text_right(gap < 0 ? "binds" : length_words(gap, derived),
                    gap < 0 ? colour::red : colour::ink);
}

// What a shim is thick, place by place.
void draw_gaps(const model::OpeningFit& fit, const Derived& derived) {
    const TableScope table("gaps", 4, ImGuiTableFlags_BordersInnerH);
    if (!table) return;
    ImGui::TableSetupColumn("Gaps, centred", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("Height", ImGuiTableColumnFlags_WidthFixed, scaled(80));
    ImGui::TableSetupColumn("Left", ImGuiTableColumnFlags_WidthFixed, scaled(80));
    ImGui::TableSetupColumn("Right", ImGuiTableColumnFlags_WidthFixed, scaled(80));
    {
        const FontScope small(Type::small);
        const ColourScope quiet(ImGuiCol_Text, colour::quiet);
        ImGui::TableHeadersRow();
    }
    for (const std::size_t level : {2U, 1U, 0U}) {  // as they lie, the top above
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        draw_text(name_of(static_cast<model::OpeningLevel>(level)));
        ImGui::TableNextColumn();
        draw_text_right(length_words(fit.heights[level], derived), colour::quiet);
        draw_gap(fit.gaps[0][level], derived);
        draw_gap(fit.gaps[1][level], derived);
    }
}

void draw_verdict(const OpeningVerdict& verdict, const Derived& derived, Selection& selection) {
    const model::Subject subject{model::SubjectKind::opening, verdict.frame, verdict.opening};
    const std::string name = verdict.frame + " into " + verdict.opening;
    const IdScope id(name.c_str());
    const bool is_chosen = has_subject(selection, subject);
    if (draw_row(name, name, is_chosen).clicked) {
        selection = choice_of(derived, pieces_of_frame(derived, verdict.frame), {subject});
    }
    log_item(name, verdict.words);
    const bool is_fine = verdict.severity == model::Severity::note;
    draw_wrapped(verdict.words, Type::text,
                 is_fine ? colour::ink : word_of(verdict.severity).colour);
    for (const auto& doubt : verdict.doubts) {
        draw_wrapped(doubt, Type::small, colour::amber);
        log_item("doubt of " + verdict.opening, doubt);
    }
    if (!verdict.sureness.empty()) draw_wrapped(verdict.sureness, Type::small, colour::quiet);
    if (verdict.fit) draw_gaps(*verdict.fit, derived);
    ImGui::Dummy(scaled(1, 8));
}

}  // namespace

void draw_as_built(const Derived& derived, ProveState& state, Selection& selection) {
    const auto& verdicts = verdicts_of(derived, state);
    if (verdicts.empty()) {
        draw_wrapped(
            "No opening is measured. Where a frame goes between walls, measure its real widths, "
            "diagonals and how plumb its sides are, under Measure.",
            Type::small, colour::quiet);
        log_item("no openings");
        return;
    }
    for (const auto& verdict : verdicts) draw_verdict(verdict, derived, selection);
}

}  // namespace editor

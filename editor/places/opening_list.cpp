#include "editor/places/opening_list.h"

#include "editor/findings_about.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

namespace editor {
namespace {

std::string words_of(const model::MeasuredOpening& opening) {
    return opening.widths[0] + ", " + opening.widths[1] + ", " + opening.widths[2] +
           " wide from the bottom up, " + opening.height + " high";
}

void draw_opening(const Derived& derived,
                  const model::Frame& frame,
                  const model::MeasuredOpening& opening,
                  Dialog& dialog) {
    const IdScope id(opening.name.c_str());
    if (draw_button("opening " + opening.name, {.text = opening.name, .weight = Weight::link})) {
        dialog = opening_form(frame.name, opening);
    }
    draw_hint("Change " + opening.name + " or remove it");
    draw_wrapped(words_of(opening), Type::small, colour::quiet);
    log_item("size of " + opening.name, words_of(opening));
    const model::Subject subject{model::SubjectKind::opening, frame.name, opening.name};
    for (const auto* finding : findings_about(derived.findings, subject)) {
        const bool is_error = finding->severity == model::Severity::error;
        const bool is_note = finding->severity == model::Severity::note;
        draw_wrapped(finding->what + "; " + finding->mend, Type::small,
                     is_error  ? colour::red
                     : is_note ? colour::ink
                               : colour::amber);
        log_item("of " + opening.name + ": " + finding->code, finding->what);
    }
}

}  // namespace

void draw_opening_list(const Derived& derived, Dialog& dialog) {
    for (std::size_t f = 0; f < derived.project->frames.size(); ++f) {
        const auto& frame = derived.project->frames[f];
        const IdScope id(static_cast<int>(f));
        ImGui::AlignTextToFramePadding();
        draw_text("Goes into, " + frame.name, Type::strong);
        ImGui::SameLine();
        if (draw_button("New opening for " + frame.name,
                        {.text = "+ measured opening", .weight = Weight::link})) {
            dialog = new_opening_form(derived, frame.name);
        }
        draw_hint("Its real widths, diagonals and how plumb its sides are");
        for (const auto& opening : frame.openings) draw_opening(derived, frame, opening, dialog);
    }
}

float height_of_openings(const Derived& derived) {
    const float row = ImGui::GetFrameHeightWithSpacing();
    const float line = ImGui::GetTextLineHeightWithSpacing();
    float height = scaled(4);
    for (const auto& frame : derived.project->frames) {
        height += row;
        for (const auto& opening : frame.openings) {
            const model::Subject subject{model::SubjectKind::opening, frame.name, opening.name};
            const auto said = findings_about(derived.findings, subject).size();
            height += row + line * static_cast<float>(2 + 4 * said);
        }
    }
    return height;
}

}  // namespace editor

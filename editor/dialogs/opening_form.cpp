#include "editor/dialogs/opening_form.h"

#include "editor/by_name.h"
#include "editor/dialogs/checked_field.h"
#include "editor/dialogs/form_line.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "model/room/as_built.h"

#include <array>

namespace editor {
namespace {

using model::Axis;

void draw_measures(CheckedFields& fields, model::MeasuredOpening& opening) {
    draw_radio_line<Axis>(
        "go in along", opening.through,
        {{Axis::y, "the frame's y: from the front"}, {Axis::x, "the frame's x: from the side"}});
    fields.draw_length("height", "height", opening.height, "of its sides");
    constexpr std::array<const char*, 3> words{"wide, bottom", "half-way", "at the top"};
    constexpr std::array<const char*, 3> names{"width bottom", "width middle", "width top"};
    for (std::size_t i = 0; i < 3; ++i) {
        fields.draw_length(words[i], names[i], opening.widths[i], "between the sides");
    }
    fields.draw_lengths(
        {"diagonal", "diagonal up right", opening.diagonals[0], "lower left, upper right", true},
        {"the other", "diagonal up left", opening.diagonals[1], "lower right, upper left", true});
    fields.draw_lengths(
        {"left leans in", "plumb left", opening.plumb[0], "over the height", true},
        {"right does", "plumb right", opening.plumb[1], "less than 0: outward", true});
    draw_wrapped(
        "A side leans in by how much further in its top stands than its bottom, by a plumb line. "
        "What you did not measure stays empty; a plumb line at one side, or one diagonal, tells "
        "which way both lean.",
        Type::small, colour::quiet);
}

// What the project holds already is left as it is: it may be wrong through a dimension that is
// mended elsewhere.
std::string reason_against_measures(const OpeningForm& form, const Derived& derived) {
    const auto* frame = by_name(derived.project->frames, form.frame);
    const auto* before = frame == nullptr ? nullptr : by_name(frame->openings, form.instead_of);
    if (before != nullptr) {
        auto renamed = form.opening;
        renamed.name = before->name;
        renamed.note = before->note;
        if (renamed == *before) return {};
    }
    return model::fault_of_opening(*derived.project, derived.resolved, form.opening);
}

std::optional<Change> tried_change(OpeningForm& form, const Derived& derived, bool are_known) {
    const model::Edit edit = model::PutOpening{form.frame, form.opening, form.instead_of};
    form.trouble.clear();
    if (const auto* frame = by_name(derived.project->frames, form.frame)) {
        form.trouble =
            reason_against_name(frame->openings, form.opening.name, form.instead_of, "an opening");
    }
    if (form.trouble.empty() && !are_known) form.trouble = mend_first;
    if (form.trouble.empty()) form.trouble = reason_against_edit(derived, edit);
    if (form.trouble.empty()) form.trouble = reason_against_measures(form, derived);
    form.asked.all = !are_known;
    if (!form.trouble.empty()) return std::nullopt;
    return change_of(edit);
}

}  // namespace

OpeningForm opening_form(const std::string& frame, const model::MeasuredOpening& opening) {
    return {.frame = frame, .instead_of = opening.name, .opening = opening};
}

OpeningForm new_opening_form(const Derived& derived, const std::string& frame) {
    OpeningForm form{.frame = frame};
    form.opening.plumb = {"", ""};
    form.opening.name = "opening";
    const auto* it = by_name(derived.project->frames, frame);
    for (int n = 2; it != nullptr && by_name(it->openings, form.opening.name) != nullptr; ++n) {
        form.opening.name = "opening " + std::to_string(n);
    }
    return form;
}

FormOutcome draw_opening_form(OpeningForm& form, const Derived& derived) {
    FormOutcome outcome;
    const bool is_new = form.instead_of.empty();
    const std::string title =
        (is_new ? "The real opening for " : "Change the real opening for ") + form.frame;
    const DialogScope dialog("Opening", title.c_str(), scaled(620), DialogScope::Fields::scroll);
    if (!dialog) return outcome;
    CheckedFields fields(derived, &form.asked);
    draw_form_line("name", form.opening.name, "between wall and well", form.is_fresh);
    draw_measures(fields, form.opening);
    draw_form_line("note", form.opening.note, "where it is");
    if (is_being_changed()) form.trouble.clear();
    const auto answer =
        draw_form_answers(form.trouble, {.verb = is_new ? "Add" : "Change",
                                         .can_put = !form.opening.name.empty(),
                                         .removes = is_new ? "" : "Remove this opening"});
    if (answer.puts) outcome.change = tried_change(form, derived, fields.are_all_known());
    if (answer.removes)
        outcome.change = change_of(model::RemoveOpening{form.frame, form.instead_of});
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor

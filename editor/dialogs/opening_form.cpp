#include "editor/dialogs/opening_form.h"

#include "editor/by_name.h"
#include "editor/dialogs/checked_field.h"
#include "editor/dialogs/form_line.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

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
    fields.draw_lengths({"left leans in", "plumb left", opening.plumb[0], "over the height"},
                        {"right does", "plumb right", opening.plumb[1], "less than 0: outward"});
}

std::optional<Change> tried_change(OpeningForm& form, const Derived& derived, bool are_known) {
    form.trouble.clear();
    const auto* frame = by_name(derived.project->frames, form.frame);
    const auto& name = form.opening.name;
    const model::Edit edit = model::PutOpening{form.frame, form.opening, form.instead_of};
    const auto next = model::apply(*derived.project, edit);
    if (frame != nullptr && name != form.instead_of && by_name(frame->openings, name) != nullptr) {
        form.trouble = "there is an opening \"" + name + "\" already; choose another name";
    } else if (!next) {
        form.trouble = engine::to_text(next.error());
    } else if (!are_known) {
        form.trouble = "mend what is said in red first";
    }
    if (!form.trouble.empty()) return std::nullopt;
    return change_of(edit);
}

void draw_answers(OpeningForm& form,
                  const Derived& derived,
                  bool are_known,
                  OpeningOutcome& outcome) {
    const bool can_put = !form.opening.name.empty();
    const char* verb = form.instead_of.empty() ? "Add" : "Change";
    if (draw_button("Put", {.text = verb, .weight = Weight::main, .enabled = can_put}) ||
        (can_put && is_pressed(key::enter))) {
        outcome.change = tried_change(form, derived, are_known);
    }
    ImGui::SameLine();
    outcome.is_cancelled = draw_button("Cancel") || is_pressed(key::escape);
    if (form.instead_of.empty()) return;
    ImGui::SameLine(0, scaled(40));
    if (draw_button("Remove", {.text = "Remove this opening", .weight = Weight::link})) {
        outcome.change = change_of(model::RemoveOpening{form.frame, form.instead_of});
    }
}

}  // namespace

OpeningForm opening_form(const std::string& frame, const model::MeasuredOpening& opening) {
    return {.frame = frame, .instead_of = opening.name, .opening = opening};
}

OpeningForm new_opening_form(const Derived& derived, const std::string& frame) {
    OpeningForm form{.frame = frame};
    form.opening.name = "opening";
    const auto* it = by_name(derived.project->frames, frame);
    for (int n = 2; it != nullptr && by_name(it->openings, form.opening.name) != nullptr; ++n) {
        form.opening.name = "opening " + std::to_string(n);
    }
    return form;
}

OpeningOutcome draw_opening_form(OpeningForm& form, const Derived& derived) {
    OpeningOutcome outcome;
    const bool is_new = form.instead_of.empty();
    const std::string title =
        (is_new ? "The real opening for " : "Change the real opening for ") + form.frame;
    const DialogScope dialog("Opening", title.c_str(), scaled(620));
    if (!dialog) return outcome;
    CheckedFields fields(derived);
    draw_form_line("name", form.opening.name, "between wall and well", form.is_fresh);
    draw_measures(fields, form.opening);
    draw_form_line("note", form.opening.note, "where it is");
    if (!form.trouble.empty()) {
        draw_wrapped(form.trouble, Type::text, colour::red);
        log_item("trouble", form.trouble);
    }
    ImGui::Dummy(scaled(1, 8));
    draw_answers(form, derived, fields.are_all_known(), outcome);
    form.is_fresh = false;
    if (outcome.change || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor

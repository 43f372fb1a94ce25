#include "editor/dialogs/place_form.h"

#include "editor/by_name.h"
#include "editor/dialogs/checked_field.h"
#include "editor/dimension_values.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "engine/measure/formula.h"
#include "model/project/edit.h"

#include <array>
#include <cstddef>

namespace editor {
namespace {

// What was not typed over stays as it is stated.
model::PlaceFrame edit_of(const PlaceForm& form) {
    model::PlaceFrame edit{form.frame, form.origin, form.quarter_turns};
    for (std::size_t k = 0; k < 3; ++k) {
        if (form.origin[k] == form.shown[k]) edit.origin[k] = form.stated[k];
    }
    return edit;
}

model::Place shown_place(const model::Project& project, const model::Place& stated) {
    model::Place shown = stated;
    for (auto& formula : shown) {
        const auto* dimension = by_name(project.dimensions, formula);
        if (dimension != nullptr && is_plain_value(project, *dimension))
            formula = dimension->formula;
    }
    return shown;
}

// The one chosen; its place comes with it.
void draw_frames(PlaceForm& form, const model::Project& project) {
    if (project.frames.size() < 2) return;
    std::string chosen = form.frame;
    draw_names("frame", project.frames, chosen, [](const auto&) { return true; });
    if (chosen != form.frame) form = new_place_form(project, chosen);
}

// What becomes of the dimension that says where the frame stands along an axis: a note below its
// field; empty where there is none.
std::string words_of_dimension(const PlaceForm& form, const Derived& derived, std::size_t axis) {
    const auto& name = form.stated[axis];
    if (form.shown[axis] == name) return {};
    if (form.origin[axis] == form.shown[axis]) return "as the dimension " + name + " says";
    const auto placed = model::apply(*derived.project, edit_of(form));
    const auto* frame = placed ? by_name(placed->frames, form.frame) : nullptr;
    if (frame == nullptr) return {};
    if (frame->origin[axis] == name) return "this changes the dimension " + name;
    const std::string no_longer = "the frame then follows the dimension " + name + " no longer";
    const bool is_value = engine::names_in(form.origin[axis]).empty();
    return is_value ? no_longer + ": it is a formula, or other things need it" : no_longer;
}

void draw_coordinates(CheckedFields& fields, PlaceForm& form, const Derived& derived) {
    constexpr std::array<const char*, 3> words{"across, X", "along, Y", "up, Z"};
    constexpr std::array<const char*, 3> names{"place x", "place y", "place z"};
    for (std::size_t k = 0; k < 3; ++k) {
        if (form.is_fresh && k == 0) ImGui::SetKeyboardFocusHere();
        fields.draw_length(words[k], names[k], form.origin[k], "0");
        const auto note = words_of_dimension(form, derived, k);
        if (note.empty()) continue;
        ImGui::SetCursorPosX(ImGui::GetCursorPosX() + scaled(form_column));
        draw_wrapped(note, Type::small, colour::quiet);
        log_item(std::string("dimension of ") + names[k], note);
    }
}

std::string words_of(const FrameTrial& trial) {
    if (!trial.refusal.empty()) return {};
    if (trial.findings.empty()) return "nothing new is wrong there";
    return std::to_string(trial.findings.size()) + " new to mend there";
}

}  // namespace

PlaceForm new_place_form(const model::Project& project, const std::string& frame) {
    const auto* found = by_name(project.frames, frame);
    if (found == nullptr && !project.frames.empty()) found = &project.frames.front();
    if (found == nullptr) return {};
    const auto shown = shown_place(project, found->origin);
    return {.frame = found->name,
            .stated = found->origin,
            .shown = shown,
            .origin = shown,
            .quarter_turns = found->quarter_turns};
}

FormOutcome draw_place_form(PlaceForm& form,
                            const Derived& derived,
                            const model::Catalogue& catalogue) {
    FormOutcome outcome;
    const DialogScope dialog("Place", "Place the frame in the room", scaled(520),
                             DialogScope::Fields::scroll);
    if (!dialog) return outcome;
    draw_frames(form, *derived.project);
    CheckedFields fields(derived);
    draw_coordinates(fields, form, derived);
    draw_radio_line<int>("turned", form.quarter_turns,
                         {{0, "not"}, {1, "a quarter"}, {2, "half round"}, {3, "three quarters"}});
    draw_wrapped(
        "There stands the corner of the frame from which its planes are measured. Seen from above "
        "the frame is turned against the clock about that corner.",
        Type::small, colour::quiet);
    const bool are_known = fields.are_all_known();
    const auto& at = form.origin;
    update_trial(form.trial, derived, catalogue, form.frame,
                 {form.frame, at[0], at[1], at[2], std::to_string(form.quarter_turns)},
                 [&] { return engine::Result<Change>(change_of(edit_of(form))); });
    form.trial->words = words_of(*form.trial);
    draw_rule();
    if (are_known && !form.trial->place.empty()) {
        const auto words = "It then takes up " + form.trial->place + ".";
        draw_wrapped(words);
        log_item("takes up", words);
    }
    if (are_known) draw_frame_trial(*form.trial);  // else the fields say what is wrong
    const auto answer = draw_form_answers(
        {}, {.verb = "Place it there", .can_put = form.trial->refusal.empty() && are_known});
    if (answer.puts) outcome.change = change_of(edit_of(form));
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor

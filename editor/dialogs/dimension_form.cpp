#include "editor/dialogs/dimension_form.h"

#include "editor/dialogs/form_line.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"
#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

namespace editor {
namespace {

using engine::QuantityKind;

void draw_kinds(DimensionForm& form) {
    draw_radio_line<QuantityKind>("is a", form.kind,
                                  {{QuantityKind::length, "length"},
                                   {QuantityKind::angle, "angle"},
                                   {QuantityKind::number, "plain number"}});
}

std::optional<model::Formula> optional_formula(const std::string& text) {
    return text.empty() ? std::nullopt : std::optional(text);
}

model::Dimension stated(const DimensionForm& form) {
    return {.name = form.name,
            .kind = form.kind,
            .formula = form.formula,
            .note = form.note,
            .least = optional_formula(form.least),
            .most = optional_formula(form.most)};
}

// The project that the edit would give must have a value for the dimension and its limits.
std::optional<std::string> reason_against(const Derived& derived,
                                          const DimensionForm& form,
                                          const model::Edit& edit) {
    if (!engine::is_name(form.name)) {
        return "`" + form.name +
               "` cannot be the name of a dimension: begin with a letter, go on with letters, "
               "digits and single spaces; a unit (in, mm) or a function (max) is no name";
    }
    const auto trial = model::apply(*derived.project, edit);
    if (!trial) return engine::to_text(trial.error());
    const auto value = tried_formula(*trial, form.name, form.formula);
    if (!value) return error_words(value.error(), form.formula);
    for (const auto* text : {&form.least, &form.most}) {
        if (text->empty()) continue;
        const auto limit = tried_limit(*trial, form.kind, *text);
        if (!limit) return error_words(limit.error(), *text);
    }
    return std::nullopt;
}

std::optional<Change> tried_change(DimensionForm& form, const Derived& derived) {
    const model::Edit edit = model::PutDimension{stated(form), form.instead_of};
    if (const auto reason = reason_against(derived, form, edit)) {
        form.trouble = *reason;
        return std::nullopt;
    }
    return change_of(edit);
}

std::optional<Change> tried_removal(DimensionForm& form, const Derived& derived) {
    const model::Edit edit = model::RemoveDimension{form.instead_of};
    if (const auto trial = model::apply(*derived.project, edit); !trial) {
        form.trouble = engine::to_text(trial.error());
        return std::nullopt;
    }
    return change_of(edit);
}

void draw_answers(DimensionForm& form, const Derived& derived, DimensionOutcome& outcome) {
    const bool can_put = !form.name.empty() && !form.formula.empty();
    const char* verb = form.instead_of.empty() ? "Add" : "Change";
    if (draw_button("Put", {.text = verb, .weight = Weight::main, .enabled = can_put}) ||
        (can_put && is_pressed(key::enter))) {
        outcome.change = tried_change(form, derived);
    }
    ImGui::SameLine();
    outcome.is_cancelled = draw_button("Cancel") || is_pressed(key::escape);
    if (form.instead_of.empty()) return;
    ImGui::SameLine(0, scaled(40));
    if (draw_button("Remove", {.text = "Remove this dimension", .weight = Weight::link})) {
        outcome.change = tried_removal(form, derived);
    }
}

}  // namespace

DimensionForm dimension_form(const model::Dimension& dimension) {
    return {.instead_of = dimension.name,
            .kind = dimension.kind,
            .name = dimension.name,
            .formula = dimension.formula,
            .least = dimension.least.value_or(std::string()),
            .most = dimension.most.value_or(std::string()),
            .note = dimension.note};
}

DimensionOutcome draw_dimension_form(DimensionForm& form, const Derived& derived) {
    DimensionOutcome outcome;
    const bool is_new = form.instead_of.empty();
    const DialogScope dialog("Dimension", is_new ? "New dimension" : "Change the dimension",
                             scaled(500));
    if (!dialog) return outcome;
    draw_form_line("name", form.name, "shelf level", form.is_fresh && is_new);
    draw_kinds(form);
    draw_form_line("formula", form.formula, "18 3/8, or width/2 - 1/8 in",
                   form.is_fresh && !is_new);
    draw_form_line("least", form.least, "no limit");
    draw_form_line("most", form.most, "no limit");
    draw_form_line("note", form.note, "what it is for");
    if (!form.trouble.empty()) draw_wrapped(form.trouble, Type::text, colour::red);
    ImGui::Dummy(scaled(1, 8));
    draw_answers(form, derived, outcome);
    form.is_fresh = false;
    if (outcome.change || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor

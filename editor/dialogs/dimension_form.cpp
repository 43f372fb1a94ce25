#include "editor/dialogs/dimension_form.h"

#include "editor/dialogs/form_line.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"
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
    form.trouble = reason_against_edit(derived, edit);
    if (!form.trouble.empty()) return std::nullopt;
    return change_of(edit);
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

FormOutcome draw_dimension_form(DimensionForm& form, const Derived& derived) {
    FormOutcome outcome;
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
    const auto answer =
        draw_form_answers(form.trouble, {.verb = is_new ? "Add" : "Change",
                                         .can_put = !form.name.empty() && !form.formula.empty(),
                                         .removes = is_new ? "" : "Remove this dimension"});
    if (answer.puts) outcome.change = tried_change(form, derived);
    if (answer.removes) outcome.change = tried_removal(form, derived);
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor

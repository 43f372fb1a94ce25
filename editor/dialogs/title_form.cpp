#include "editor/dialogs/title_form.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

namespace editor {

FormOutcome draw_title_form(TitleForm& form) {
    FormOutcome outcome;
    const DialogScope dialog("Title", "Name of the project", scaled(500));
    if (!dialog) return outcome;
    draw_text("name");
    draw_field("name", form.name, {.hint = "parts box", .wants_focus = form.is_fresh});
    draw_text("note");
    draw_field("note", form.note, {.hint = "what it is for"});
    const auto answer = draw_form_answers({}, {.verb = "Change"});
    if (answer.puts) outcome.change = change_of(model::SetTitle{form.name, form.note});
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor

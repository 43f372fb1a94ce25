#include "editor/dialogs/title_form.h"

#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

namespace editor {

TitleOutcome draw_title_form(TitleForm& form) {
    TitleOutcome outcome;
    const DialogScope dialog("Title", "Name of the project", scaled(500));
    if (!dialog) return outcome;
    draw_text("name");
    draw_field("name", form.name, {.hint = "parts box", .wants_focus = form.is_fresh});
    draw_text("note");
    draw_field("note", form.note, {.hint = "what it is for"});
    ImGui::Dummy(scaled(1, 8));
    if (draw_button("Put", {.text = "Change", .weight = Weight::main}) || is_pressed(key::enter)) {
        outcome.change = change_of(model::SetTitle{form.name, form.note});
    }
    ImGui::SameLine();
    outcome.is_cancelled = draw_button("Cancel") || is_pressed(key::escape);
    form.is_fresh = false;
    if (outcome.change || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor

#include "editor/dialogs/unsaved_question.h"

#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

namespace editor {
namespace {

const char* discard_text(const UnsavedQuestion& question) {
    const bool leaves = question.then.kind == Intent::Kind::leave;
    if (!question.can_save) return leaves ? "Leave all the same" : "Go on all the same";
    return leaves ? "Leave without saving" : "Go on without saving";
}

UnsavedAnswer draw_answers(const UnsavedQuestion& question) {
    auto answer = UnsavedAnswer::none;
    if (question.can_save) {
        if (draw_button("Save", {.weight = Weight::main}) || is_pressed(key::enter)) {
            answer = UnsavedAnswer::save;
        }
        ImGui::SameLine();
    }
    if (draw_button("Discard", {.text = discard_text(question)})) answer = UnsavedAnswer::discard;
    ImGui::SameLine();
    if (draw_button("Stay") || is_pressed(key::escape)) answer = UnsavedAnswer::stay;
    return answer;
}

}  // namespace

UnsavedAnswer draw_unsaved_question(const UnsavedQuestion& question) {
    const char* title = question.can_save ? "Save the changes first?" : "Something is unfinished";
    const DialogScope dialog("Unsaved", title, scaled(520));
    if (!dialog) return UnsavedAnswer::none;
    draw_wrapped(question.reasons);
    log_item("reasons", question.reasons);
    ImGui::Dummy(scaled(1, 10));
    const auto answer = draw_answers(question);
    if (answer != UnsavedAnswer::none) ImGui::CloseCurrentPopup();
    return answer;
}

}  // namespace editor

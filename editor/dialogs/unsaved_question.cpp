#include "editor/dialogs/unsaved_question.h"

#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

namespace editor {
namespace {

const char* discard_text(Intent::Kind kind) {
    return kind == Intent::Kind::leave ? "Leave without saving" : "Put away without saving";
}

}  // namespace

UnsavedAnswer draw_unsaved_question(const UnsavedQuestion& question, const std::string& title) {
    const DialogScope dialog("Unsaved", "Save the changes first?", scaled(520));
    if (!dialog) return UnsavedAnswer::none;
    draw_wrapped(title + " has changes that are in no file yet.");
    ImGui::Dummy(scaled(1, 10));
    auto answer = UnsavedAnswer::none;
    if (draw_button("Save", {.weight = Weight::main})) answer = UnsavedAnswer::save;
    ImGui::SameLine();
    if (draw_button("Discard", {.text = discard_text(question.then.kind)})) {
        answer = UnsavedAnswer::discard;
    }
    ImGui::SameLine();
    if (draw_button("Stay") || is_pressed(key::escape)) answer = UnsavedAnswer::stay;
    if (is_pressed(key::enter)) answer = UnsavedAnswer::save;
    if (answer != UnsavedAnswer::none) ImGui::CloseCurrentPopup();
    return answer;
}

}  // namespace editor

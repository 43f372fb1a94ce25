#include "editor/dialogs/recovery_question.h"

#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

namespace editor {

RecoveryAnswer draw_recovery_question(const RecoveryQuestion& question) {
    const DialogScope dialog("Recovery", "Bring back what was not saved?", scaled(560));
    if (!dialog) return RecoveryAnswer::none;
    draw_wrapped("Barwright ended before it could ask. " + question.words);
    log_item("words", question.words);
    ImGui::Dummy(scaled(1, 10));
    auto answer = RecoveryAnswer::none;
    if (draw_button("Bring back", {.text = "Bring back", .weight = Weight::main}) ||
        is_pressed(key::enter)) {
        answer = RecoveryAnswer::bring_back;
    }
    ImGui::SameLine();
    if (draw_button("Later", {.text = "Ask again next time"}) || is_pressed(key::escape)) {
        answer = RecoveryAnswer::later;
    }
    ImGui::SameLine(0, scaled(30));
    if (draw_button("Discard", {.text = "Throw away for good", .weight = Weight::link}))
        answer = RecoveryAnswer::discard;
    if (answer != RecoveryAnswer::none) ImGui::CloseCurrentPopup();
    return answer;
}

}  // namespace editor

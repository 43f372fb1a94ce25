#include "editor/dialogs/changed_question.h"

#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <string>

namespace editor {
namespace {

std::string words_of(const ChangedQuestion& question) {
    std::string words = question.file.string() +
                        " was written by something else since it was opened or saved here, and "
                        "holds something else now.";
    if (question.when == ChangedQuestion::When::saving)
        return words + " Saving would write over that.";
    return words + (question.has_edits ? " Reading it again drops what was edited here." : "");
}

ChangedAnswer draw_saving_answers() {
    auto answer = ChangedAnswer::none;
    if (draw_button("Save apart",
                    {.text = "Save as another file\xE2\x80\xA6", .weight = Weight::main}) ||
        is_pressed(key::enter)) {
        answer = ChangedAnswer::save_apart;
    }
    ImGui::SameLine();
    if (draw_button("Save over", {.text = "Write over it"})) answer = ChangedAnswer::save_over;
    return answer;
}

ChangedAnswer draw_reading_answers(bool has_edits) {
    auto answer = ChangedAnswer::none;
    const Weight weight = has_edits ? Weight::plain : Weight::main;
    if (draw_button("Read again", {.text = "Read it again", .weight = weight}) ||
        (!has_edits && is_pressed(key::enter))) {
        answer = ChangedAnswer::read_again;
    }
    return answer;
}

}  // namespace

ChangedAnswer draw_changed_question(const ChangedQuestion& question) {
    const DialogScope dialog("Changed", "The file has changed", scaled(560));
    if (!dialog) return ChangedAnswer::none;
    const auto words = words_of(question);
    draw_wrapped(words);
    log_item("words", words);
    ImGui::Dummy(scaled(1, 10));
    const bool saves = question.when == ChangedQuestion::When::saving;
    auto answer = saves ? draw_saving_answers() : draw_reading_answers(question.has_edits);
    ImGui::SameLine();
    if (draw_button("Stay", {.text = saves ? "Stay" : "Keep what is here"}) ||
        is_pressed(key::escape)) {
        answer = ChangedAnswer::stay;
    }
    if (answer != ChangedAnswer::none) ImGui::CloseCurrentPopup();
    return answer;
}

}  // namespace editor

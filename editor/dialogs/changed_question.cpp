#include "editor/dialogs/changed_question.h"

#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

namespace editor {
namespace {

std::string words_of(const ChangedQuestion& question) {
    const std::string changed =
        question.file.string() + " was written by something else since it was opened or saved here";
    if (question.when == ChangedQuestion::When::saving) {
        const std::string holds =
            question.fault.empty() ? ", and holds something else now."
                                   : ", and cannot be read as a project: " + question.fault + ".";
        return changed + holds + " Saving would write over that.";
    }
    if (question.drops.empty()) return changed + ", and holds something else now.";
    return changed + ". Reading it again loses what is here:\n" + question.drops;
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

ChangedAnswer draw_reading_answers(bool loses) {
    auto answer = ChangedAnswer::none;
    const Weight weight = loses ? Weight::plain : Weight::main;
    if (draw_button("Read again", {.text = "Read it again", .weight = weight}) ||
        (!loses && is_pressed(key::enter))) {
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
    auto answer = saves ? draw_saving_answers() : draw_reading_answers(!question.drops.empty());
    ImGui::SameLine();
    if (draw_button("Stay", {.text = saves ? "Do not save now" : "Keep what is here"}) ||
        is_pressed(key::escape)) {
        answer = ChangedAnswer::stay;
    }
    if (answer != ChangedAnswer::none) ImGui::CloseCurrentPopup();
    return answer;
}

}  // namespace editor

#include "editor/file_changes.h"

#include "editor/desk_files.h"
#include "editor/open_project.h"
#include "editor/typing.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

// Also about what to do with what is in no file yet: the file is looked at when that is answered.
bool asks_already(const UiState& ui) {
    const auto is_question = [](const Dialog& dialog) {
        return std::holds_alternative<ChangedQuestion>(dialog) ||
               std::holds_alternative<UnsavedQuestion>(dialog);
    };
    return is_question(ui.dialog) ||
           std::any_of(ui.interrupted.begin(), ui.interrupted.end(), is_question);
}

// What is here is then what has not been saved: nothing of it is put away without a question.
void keep_what_is_here(Desk& desk) {
    if (auto now = on_disk(desk); now.other) desk.history.mark_saved_as(*std::move(now.other));
}

void save_and_go_on(Desk& desk, const std::optional<Intent>& then) {
    if (save_to(desk, desk.file) && then) fulfil(desk, *then);
}

}  // namespace

OnDisk on_disk(const Desk& desk) {
    if (desk.file.empty() || stamp_of(desk.file) == FileStamp{}) return {};
    auto read = open_project(desk.file);
    if (!read) return {.fault = engine::to_text(read.error())};
    if (*read == *desk.history.saved()) return {};
    return {.other = std::move(read).value()};
}

void look_at_file(Desk& desk) {
    if (desk.file.empty()) return;
    const auto stamp = stamp_of(desk.file);
    if (stamp == desk.file_stamp || stamp == FileStamp{} || asks_already(desk.ui)) return;
    const auto now = on_disk(desk);
    if (!now.fault.empty()) return;  // perhaps it is being written; saving asks
    desk.file_stamp = stamp;
    if (!now.other) return;
    take_typing(desk);
    interrupt_with(desk, ChangedQuestion{.when = ChangedQuestion::When::coming_back,
                                         .file = desk.file,
                                         .drops = reasons_to_ask(desk)});
}

void save_or_ask(Desk& desk, std::optional<Intent> then) {
    const auto now = on_disk(desk);
    if (!now.is_changed()) return save_and_go_on(desk, then);
    interrupt_with(desk, ChangedQuestion{.when = ChangedQuestion::When::saving,
                                         .file = desk.file,
                                         .fault = now.fault,
                                         .then = std::move(then)});
}

void settle_changed(Desk& desk, const ChangedQuestion& question, ChangedAnswer answer) {
    switch (answer) {
        case ChangedAnswer::save_over:
            return save_and_go_on(desk, question.then);
        case ChangedAnswer::save_apart:
            return browse_to_save(desk, question.then);
        case ChangedAnswer::read_again:
            open_file(desk, question.file);
            return;
        case ChangedAnswer::stay:
            if (question.when == ChangedQuestion::When::coming_back) keep_what_is_here(desk);
            return;
        case ChangedAnswer::none:
            return;
    }
}

}  // namespace editor

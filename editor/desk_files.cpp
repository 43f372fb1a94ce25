#include "editor/desk_files.h"

#include "editor/bench_desk.h"
#include "editor/export_run.h"
#include "editor/file_changes.h"
#include "editor/journal_keeper.h"
#include "editor/left_behind.h"
#include "editor/open_project.h"
#include "editor/paper_desk.h"
#include "editor/purchases_along.h"
#include "editor/recent_files.h"
#include "editor/scan_paths.h"
#include "editor/typing.h"
#include "engine/files/whole_file.h"
#include "model/project/project_json.h"

#include <algorithm>
#include <system_error>
#include <variant>

namespace editor {
namespace {

namespace fs = std::filesystem;

void say_trouble(Desk& desk, std::string title, const engine::Error& error) {
    interrupt_with(desk, Trouble{std::move(title), engine::to_text(error)});
}

fs::path usual_folder(const Desk& desk) {
    std::error_code ignored;
    return desk.file.empty() ? fs::current_path(ignored) : desk.file.parent_path();
}

// "Parts box" becomes "Parts box.barwright.json": what is not allowed in a name becomes a space.
std::string usual_file_name(const Desk& desk) {
    if (!desk.file.empty()) return desk.file.filename().string();
    const auto& project = project_of(desk);
    std::string name =
        project.name.empty() && !project.frames.empty() ? project.frames[0].name : title_of(desk);
    for (char& c : name) {
        if (c == '/' || c == '\\' || c == ':') c = ' ';
    }
    return with_project_ending(name).string();
}

// The file is as it is here.
void note_file(Desk& desk) {
    desk.file_stamp = stamp_of(desk.file);
    add_recent(desk.recent, desk.file, desk.state_folder);
}

// What lies beside the project goes with it. The project is saved all the same.
bool is_all_along(Desk& desk) {
    if (!are_purchases_filed(desk)) {
        const auto filed = file_purchases(desk);
        if (!filed) {
            say_trouble(desk, "What was bought is not saved", filed.error());
            return false;
        }
        read_prices_again(desk);  // the lists lie elsewhere from here
    }
    if (!desk.ui.make.bench) return true;
    tend_bench(desk);
    const auto& bench = *desk.ui.make.bench;
    if (bench.awaited.empty()) return true;
    interrupt_with(desk, Trouble{"What was ticked is not saved", bench.refused});
    return false;
}

bool has_open_form(const UiState& ui) {
    return is_form(ui.dialog) || std::any_of(ui.interrupted.begin(), ui.interrupted.end(), is_form);
}

std::string with_refused(std::string said, const Desk& desk) {
    const auto refused = refused_typing(desk);
    return refused.empty() ? said : said + "; not in it: " + refused;
}

void take_exported(Desk& desk, const engine::Result<ToWrite>& made) {
    const auto written = made ? write_all(*made) : engine::Result<engine::Done>{made.error()};
    if (!written) return say_trouble(desk, "The schedules are not written", written.error());
    desk.ui.help.has_exported = true;
    desk.ui.notice = Notice{with_refused(made->words, desk), false};
}

}  // namespace

std::string reasons_to_ask(const Desk& desk) {
    std::string reasons;
    const auto add = [&](const std::string& reason) {
        reasons += (reasons.empty() ? "" : "\n") + reason;
    };
    if (!desk.history.is_saved()) add(title_of(desk) + " has changes that are in no file yet.");
    if (has_purchases_in_no_file(desk)) add("What was bought is in no file yet.");
    const auto refused = refused_typing(desk);
    if (!refused.empty()) add("What was typed cannot be taken. " + refused);
    if (has_open_form(desk.ui)) add("A form is open, and what it says is not in the project.");
    return reasons;
}

void wish(Desk& desk, const Intent& intent) {
    take_typing(desk);
    auto reasons = reasons_to_ask(desk);
    if (reasons.empty()) {
        fulfil(desk, intent);
    } else {
        const bool can_save = !desk.history.is_saved() || has_purchases_in_no_file(desk);
        interrupt_with(desk, UnsavedQuestion{intent, std::move(reasons), can_save});
    }
}

void fulfil(Desk& desk, const Intent& intent) {
    switch (intent.kind) {
        case Intent::Kind::leave:
            desk.ui.wants_to_leave = true;
            break;
        case Intent::Kind::begin_new:
            replace_project(desk, {}, {});
            break;
        case Intent::Kind::bring_back:
            bring_back(desk, intent.file);
            break;
        case Intent::Kind::browse:
            interrupt_with(desk, browser_for(BrowseFor::opening, usual_folder(desk)));
            break;
        case Intent::Kind::open_file:
            if (open_file(desk, intent.file) && intent.passed_over > 0) {
                desk.ui.notice->text += "; of the files that were dropped, only this one is opened";
            }
            break;
    }
}

bool open_file(Desk& desk, const fs::path& file) {
    auto project = open_project(file);
    if (!project) {
        say_trouble(desk, "This file cannot be opened", project.error());
        return false;
    }
    replace_project(desk, std::move(project).value(), file);
    note_file(desk);
    desk.ui.notice = Notice{"Opened " + file.string(), false};
    return true;
}

bool save_to(Desk& desk, const fs::path& file) {
    if (desk.journal) desk.journal->keep(desk, true);
    const auto restated = restated_files(project_of(desk), desk.file, file);
    const auto written = engine::write_whole_file(
        file, model::to_json_text(restated ? *restated : project_of(desk)));
    if (!written) {
        say_trouble(desk, "The project is not saved", written.error());
        return false;
    }
    restate_files(desk, file);
    desk.history.mark_saved();
    if (desk.journal) desk.journal->keep(desk, true);
    note_file(desk);
    desk.ui.notice = Notice{with_refused("Saved " + desk.file.string(), desk), false};
    return is_all_along(desk);
}

void save_or_browse(Desk& desk, std::optional<Intent> then) {
    if (desk.file.empty()) {
        browse_to_save(desk, std::move(then));
    } else {
        save_or_ask(desk, std::move(then));
    }
}

void browse_to_save(Desk& desk, std::optional<Intent> then) {
    auto browser = browser_for(BrowseFor::saving, usual_folder(desk), usual_file_name(desk));
    browser.then = std::move(then);
    interrupt_with(desk, std::move(browser));
}

void wish_to_export(Desk& desk) {
    if (derived(desk).summary.errors > 0) {
        desk.ui.dialog = ExportQuestion{};
    } else {
        browse_to_export(desk);
    }
}

void browse_to_export(Desk& desk) {
    interrupt_with(desk, browser_for(BrowseFor::exporting, usual_folder(desk)));
}

bool export_to(Desk& desk, const fs::path& folder) {
    const auto& now = derived(desk);
    const ExportState state{.errors = now.summary.errors, .open = now.summary.open()};
    begin_writing(
        desk, "Writing the schedules",
        [work = paper_work(desk, now), folder, state](const PaperGoOn& go_on) {
            return export_to_write(work, folder, state, go_on);
        },
        take_exported);
    return !std::holds_alternative<Trouble>(desk.ui.dialog);
}

}  // namespace editor

#include "editor/desk_files.h"

#include "editor/open_project.h"
#include "engine/files/whole_file.h"
#include "model/project/project_json.h"
#include "model/schedule/write_all.h"

#include <system_error>

namespace editor {
namespace {

namespace fs = std::filesystem;

void say_trouble(Desk& desk, std::string title, const engine::Error& error) {
    desk.ui.dialog = Trouble{std::move(title), engine::to_text(error)};
}

fs::path usual_folder(const Desk& desk) {
    std::error_code ignored;
    return desk.file.empty() ? fs::current_path(ignored) : desk.file.parent_path();
}

// "Parts box" becomes "parts box.json": what is not allowed in a name becomes a space.
std::string usual_file_name(const Desk& desk) {
    if (!desk.file.empty()) return desk.file.filename().string();
    std::string name = title_of(desk);
    for (char& c : name) {
        if (c == '/' || c == '\\' || c == ':') c = ' ';
    }
    return with_project_ending(name).string();
}

}  // namespace

void wish(Desk& desk, const Intent& intent) {
    if (desk.history.is_saved()) {
        fulfil(desk, intent);
    } else {
        desk.ui.dialog = UnsavedQuestion{intent};
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
        case Intent::Kind::browse:
            desk.ui.dialog = browser_for(BrowseFor::opening, usual_folder(desk));
            break;
        case Intent::Kind::open_file:
            open_file(desk, intent.file);
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
    desk.ui.notice = Notice{"Opened " + file.string(), false};
    return true;
}

bool save_to(Desk& desk, const fs::path& file) {
    const auto written = engine::write_whole_file(file, model::to_json_text(project_of(desk)));
    if (!written) {
        say_trouble(desk, "The project is not saved", written.error());
        return false;
    }
    desk.file = file;
    desk.history.mark_saved();
    desk.ui.notice = Notice{"Saved " + file.string(), false};
    return true;
}

void save_or_browse(Desk& desk, std::optional<Intent> then) {
    if (desk.file.empty()) {
        browse_to_save(desk, std::move(then));
    } else if (save_to(desk, desk.file) && then) {
        fulfil(desk, *then);
    }
}

void browse_to_save(Desk& desk, std::optional<Intent> then) {
    auto browser = browser_for(BrowseFor::saving, usual_folder(desk), usual_file_name(desk));
    browser.then = std::move(then);
    desk.ui.dialog = std::move(browser);
}

void browse_to_export(Desk& desk) {
    desk.ui.dialog = browser_for(BrowseFor::exporting, usual_folder(desk));
}

bool export_to(Desk& desk, const fs::path& folder) {
    const auto files =
        model::schedule_files(project_of(desk), *desk.catalogue, derived(desk).resolved);
    const auto written = model::write_all(files, folder);
    if (!written) {
        say_trouble(desk, "The schedules are not written", written.error());
        return false;
    }
    desk.ui.notice = Notice{
        "Wrote " + std::to_string(files.size()) + " schedules into " + folder.string(), false};
    return true;
}

}  // namespace editor

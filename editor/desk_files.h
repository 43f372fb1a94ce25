// Opening, saving and exporting from the desk; every failure is shown and loses nothing.
#pragma once

#include "editor/desk.h"
#include "editor/intent.h"

#include <filesystem>

namespace editor {

// Takes what is half typed, then does what the user is about to do - or asks first when changes are
// not saved, a typed text will not do, or a form is open.
void wish(Desk& desk, const Intent& intent);

// Does it, whatever is not saved.
void fulfil(Desk& desk, const Intent& intent);

// What would be lost, were the project put away as it is now: sentences, a line each; empty:
// nothing.
std::string reasons_to_ask(const Desk& desk);

// Reads a project and takes it. On an error the present one stays, and a dialog says why.
bool open_file(Desk& desk, const std::filesystem::path& file);

// Writes the project, and takes what lies beside it along. False where one of both failed: a dialog
// says which and why, and only a project that could not be written does not count as saved.
bool save_to(Desk& desk, const std::filesystem::path& file);

// Saves, or asks for a file when there is none yet. `then` follows a save.
void save_or_browse(Desk& desk, std::optional<Intent> then = {});
void browse_to_save(Desk& desk, std::optional<Intent> then = {});

// Asks for the folder; first, where a finding is an error, whether to write at all.
void wish_to_export(Desk& desk);
void browse_to_export(Desk& desk);

// Writes all schedules of the project into the folder, worked out beside the window where the desk
// has somebody to do it. False where it failed at once; a dialog says why.
bool export_to(Desk& desk, const std::filesystem::path& folder);

}  // namespace editor

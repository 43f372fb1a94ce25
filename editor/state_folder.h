// Where the program keeps what is its own and not the user's: journals of edits, recent files.
#pragma once

#include <filesystem>

namespace editor {

// XDG_STATE_HOME/barwright, or ~/.local/state/barwright (XDG Base Directory Specification 0.8);
// empty where there is no home. It is made when something is first kept in it.
std::filesystem::path usual_state_folder();

// Makes the folder where it is missing, for its owner alone; says whether it is there then.
bool is_made(const std::filesystem::path& folder);

}  // namespace editor

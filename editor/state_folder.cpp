#include "editor/state_folder.h"

#include <cstdlib>
#include <system_error>

namespace editor {

namespace fs = std::filesystem;

namespace {

constexpr const char* own_folder = "barwright";

}  // namespace

fs::path usual_state_folder() {
    // The specification has relative paths ignored.
    const char* state = std::getenv("XDG_STATE_HOME");
    if (state != nullptr && fs::path(state).is_absolute()) return fs::path(state) / own_folder;
    const char* home = std::getenv("HOME");
    if (home == nullptr || !fs::path(home).is_absolute()) return {};
    return fs::path(home) / ".local/state" / own_folder;
}

bool is_made(const fs::path& folder) {
    std::error_code failure;
    if (fs::is_directory(folder, failure)) return true;
    const auto above = folder.parent_path();
    if (above.filename() == own_folder && !is_made(above)) return false;
    fs::create_directories(folder, failure);
    if (failure) return false;
    fs::permissions(folder, fs::perms::owner_all, failure);
    return !failure;
}

}  // namespace editor

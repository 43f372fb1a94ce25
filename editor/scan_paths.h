// How a project names the files of its scans and price lists.
#pragma once

#include "editor/desk.h"

#include <filesystem>
#include <optional>
#include <string>

namespace editor {

// Where the project looks for a scan's file, and how it names one: relative to its own folder where
// the file lies in or below it.
std::filesystem::path scan_path(const Desk& desk, const std::string& stated);
std::string stated_path(const Desk& desk, const std::filesystem::path& file);

// The project as it names the same files from another folder; none where it names them as before.
std::optional<model::Project> restated_files(const model::Project& project,
                                             const std::filesystem::path& old_file,
                                             const std::filesystem::path& new_file);

// The project is in that file now: all its states, forms that wait, and what has been read name
// their files from there.
void restate_files(Desk& desk, const std::filesystem::path& new_file);

// The file in a model::scan_key.
std::string file_of_key(const std::string& key);

}  // namespace editor

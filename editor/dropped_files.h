// Files that are dropped onto the window: scans come into the room, a project is opened.
#pragma once

#include "editor/desk.h"

#include <filesystem>
#include <vector>

namespace editor {

// Where there are scans among them they come in one after another, and what is no scan is told as
// left out; else the first file is opened as a project.
void take_dropped(Desk& desk, const std::vector<std::filesystem::path>& files);

}  // namespace editor

// A file, opened by the program that the system has for it.
#pragma once

#include "engine/result.h"

#include <filesystem>

namespace editor {

// Does not wait for it. Error: unknown_name where the system has no such opener, with the file.
engine::Result<engine::Done> open_outside(const std::filesystem::path& file);

}  // namespace editor

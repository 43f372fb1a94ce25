// A file that is in the way and not ours to write over.
#pragma once

#include "engine/result.h"

#include <filesystem>

namespace editor {

// Where there is such a file it is renamed to the first free of ".old", ".old2", and so on: what
// was put aside before stays too. Error: cannot_write; then it lies where it lay.
engine::Result<engine::Done> put_aside(const std::filesystem::path& file);

// The first of those names that is free.
std::filesystem::path name_aside(const std::filesystem::path& file);

}  // namespace editor

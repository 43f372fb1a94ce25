// Files beside a project that is saved under another name: those that go along, and those that are
// in the way there and not ours to write over.
#pragma once

#include "engine/result.h"

#include <filesystem>

namespace editor {

// Where there is such a file it is renamed to the first free of ".old", ".old2", and so on: what
// was put aside before stays too. Error: cannot_write; then it lies where it lay.
engine::Result<engine::Done> put_aside(const std::filesystem::path& file);

// Whether both name one file that is there, however each is spelled.
bool is_one_file(const std::filesystem::path& one, const std::filesystem::path& other);

// What it holds nobody knows; it is not ours to leave behind. Nothing where there is no such file.
// Error: cannot_read, cannot_write.
engine::Result<engine::Done> copy_unread(const std::filesystem::path& own,
                                         const std::filesystem::path& there);

// The first of those names that is free.
std::filesystem::path name_aside(const std::filesystem::path& file);

}  // namespace editor

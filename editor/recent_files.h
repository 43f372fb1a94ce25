// The projects that were opened or saved last, kept from one run to the next.
#pragma once

#include "engine/result.h"

#include <filesystem>
#include <vector>

namespace editor {

inline constexpr std::size_t most_recent_files = 8;

// The last first, those that are there no longer left out; empty where nothing can be read.
std::vector<std::filesystem::path> recent_files(const std::filesystem::path& state_folder);

// Puts the file first and writes the list. Where that cannot be written it holds for this run.
void add_recent(std::vector<std::filesystem::path>& recent,
                const std::filesystem::path& file,
                const std::filesystem::path& state_folder);

}  // namespace editor

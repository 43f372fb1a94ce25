// A project and the catalogue as files give them.
#pragma once

#include "engine/result.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"

#include <cstdint>
#include <filesystem>

namespace editor {

// Far above any real project (10,000 members take some megabytes), and small enough that a wrong
// file is told in a moment.
inline constexpr std::uintmax_t most_project_bytes = 32U << 20U;

// Errors as of read_whole_file and read_project_json; `where` begins with the file.
engine::Result<model::Project> open_project(const std::filesystem::path& file);

// The catalogue in the program's own assets. Errors as of assets_path and load_catalogue.
engine::Result<model::Catalogue> open_catalogue();

}  // namespace editor

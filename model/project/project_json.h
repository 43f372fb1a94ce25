// The project on disk: JSON, readable and in a stable order.
#pragma once

#include "engine/result.h"
#include "model/project/project.h"

#include <string>
#include <string_view>

namespace model {

// The version of the format this program writes and the newest that it reads: "barwright": 1.
inline constexpr int project_format = 1;

// Stable order, one field a line, short lists on one line; ends with a newline.
std::string to_json_text(const Project& project);

// Errors: bad_file for what is not JSON (line and column in `where`) or has a wrong or unknown
// field (JSON pointer in `where`, what was expected in the message); newer_version for a later
// format. Duplicate names and references to nothing are read as they are: resolve reports them as
// findings.
engine::Result<Project> read_project_json(std::string_view text);

}  // namespace model

// Scans written for tests, and projects that refer to them.
#pragma once

#include "model/project/project.h"

#include <filesystem>
#include <string>

namespace tests {

// The inside of a box: looked at from within.
std::string box_as_obj(double x, double y, double z);

// Gives the file; fails the test where it cannot be written.
std::filesystem::path written(const std::filesystem::path& file, const std::string& text);

// One obstacle "van": that file, in metres.
model::Project project_with_scan(const std::string& file);

}  // namespace tests

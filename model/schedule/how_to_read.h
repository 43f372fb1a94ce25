// The sheet that goes with the schedules: how to work from them, and the usual cautions.
#pragma once

#include "model/project/project.h"
#include "model/resolve/finding.h"

#include <string>
#include <vector>

namespace model {

// Plain text. Says at its head when a finding is an error, so that nobody cuts from it by mistake.
std::string how_to_read(const Project& project, const std::vector<Finding>& findings);

}  // namespace model

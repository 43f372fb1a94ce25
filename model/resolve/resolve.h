// From what the user states to everything that follows from it.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

namespace model {

// Pure and total: reads no file, clock or screen and never fails. What cannot be resolved is left
// out and reported as a finding.
Resolved resolve(const Project& project, const Catalogue& catalogue);

}  // namespace model

// From what the user states to everything that follows from it.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

namespace model {

// Pure and total: reads no file, clock or screen and never fails. What cannot be resolved is left
// out and reported as a finding.
Resolved resolve(const Project& project, const Catalogue& catalogue);

struct Attempt {
    Resolved resolved;
    bool is_whole = true;  // otherwise it ended at an error
};

// For many values of which most cannot be built: the same, but where there is an error before any
// fastener is placed it ends there, with the planes of all frames and what was found so far.
Attempt resolve_until_error(const Project& project, const Catalogue& catalogue);

}  // namespace model

// A project taken all the way: resolved, and its schedules as an outsider would read them.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include "tests/support/skeleton_checks.h"

namespace tests {

// The texts of all schedules.
SkeletonFiles written_files(const model::Project& project, const model::Catalogue& catalogue);

// What the project's shop asks for, as far as it holds for every lap.
LayoutRules rules_of(const model::Project& project);

}  // namespace tests

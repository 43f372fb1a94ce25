// Which dimensions are the measures of an obstacle, as a survey by tape or a step over it leaves
// them: a list of dimensions may keep them together.
#pragma once

#include "model/project/project.h"

#include <string>
#include <vector>

namespace model {

// For each dimension the obstacle that it is a measure of, else empty: the only one whose formulas
// stand on it, also by way of other dimensions, where its name begins with the obstacle's.
std::vector<std::string> obstacle_measures(const Project& project);

// The measures that bear the name that an obstacle had before take the one that it has now, and all
// formulas say it; where such a dimension is there already they stay as they are.
void rename_measures(Project& project, const std::string& before, const std::string& now);

}  // namespace model

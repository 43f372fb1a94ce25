// Projects of a given number of members for the bench, about eight holes a member.
#pragma once

#include "model/project/project.h"

#include <string_view>

namespace tests {

enum class BenchShape {
    cabinets,  // many frames of 24 to 40 members each, no two of one size
    lattice,   // one frame: boxes side by side and on top of one another
};

std::string_view name_of(BenchShape shape);

// At least `members` members, and fewer than a cabinet more.
model::Project bench_project(BenchShape shape, int members);

}  // namespace tests

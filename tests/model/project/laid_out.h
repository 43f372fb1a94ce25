// Frames to try edits of laying out on, and what resolves from them.
#pragma once

#include "model/project/edit.h"
#include "model/resolve/resolved.h"

#include <map>
#include <string>
#include <tuple>

namespace model_tests {

// Fail the test where the edit is refused, or is not.
model::Project edited(const model::Project& before, const model::Edit& edit);
engine::Error refused(const model::Project& before, const model::Edit& edit);

// A box frame "box", 36 x 18 x 30 in, of angle 1 x 1 x 1/8, with shelves and dividers as asked.
model::Project started_box(int shelves = 0, int dividers = 0);

const model::Member& member(const model::Project& project, const std::string& name);

model::Resolved resolved(const model::Project& project);

// Errors and warnings with where they are, one line each.
std::string faults(const model::Resolved& resolved);

// How many pieces of each mark the frame has: as drawn, opposite hand, of neither hand.
using Hands = std::array<int, 3>;
std::map<std::string, Hands> hands_by_mark(const model::Resolved& resolved, std::size_t frame);

}  // namespace model_tests

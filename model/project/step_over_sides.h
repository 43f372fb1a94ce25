// The sides of the box that a frame leaves free for an obstacle, as sums of what they are measured
// from: a face of the obstacle, the clearance, heads and tails, and where the frame stands.
#pragma once

#include "model/project/edit.h"
#include "model/project/step_over_layout.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace model {

// A formula added or taken away.
struct Term {
    bool is_added = true;
    Formula* source = nullptr;  // of the project; becomes a dimension where it is a plain value
    std::string name;           // of that dimension
    std::string note;
    bool wants_name = false;  // becomes one too where it is more than a name
};

using Terms = std::vector<Term>;

// In the frame, by axis, least side first.
using Sides = std::array<std::array<Terms, 2>, 3>;

std::string sum_text(const Terms& terms);

engine::Result<Nm> value_of(const Terms& terms,
                            const DimensionValues& values,
                            const std::string& where);

// The name of a thing as it can begin the name of a dimension.
std::string name_in_formulas(const std::string& text);

// A plain value becomes a dimension, so that it can be changed in one place and all follows.
void give_name(Project& project, const Term& term);

inline std::string free_name_among(const std::string& wanted, const auto& things) {
    const auto is_taken = [&](const std::string& name) {
        return std::ranges::any_of(things, [&](const auto& it) { return it.name == name; });
    };
    std::string name = wanted;
    for (int n = 2; is_taken(name); ++n) name = wanted + " " + std::to_string(n);
    return name;
}

// The room for heads and tails as the edit states it. The dimension that an earlier step of the
// frame stands on serves this one too, and grows where it is not enough, so that sides that lie at
// one place stay there together.
Formula shared_standing(Project& project, const Frame& frame, const Formula& standing);

// What the edit states of the clearance is put with the obstacle; `standing` is the edit's, and
// must live as long as the sides. Error: an obstacle of a kind that has no such faces, a clearance
// or room for heads without a value or below zero.
engine::Result<Sides> sides_at(
    Project& project, Obstacle& obstacle, Frame& frame, const StepOver& edit, Formula& standing);

}  // namespace model

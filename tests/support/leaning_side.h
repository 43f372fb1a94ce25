// A cabinet whose back leans in with the wall: its two posts at the back are leaning members.
#pragma once

#include "model/project/project.h"

#include "tests/support/frame_builder.h"

#include <string>
#include <vector>

namespace tests {

struct LeaningShape {
    Nm width = inches(24);
    Nm depth = inches(18);  // at the floor
    Nm height = inches(30);
    Nm leans_in = 0;          // how much further in its top lies
    std::vector<Nm> shelves;  // levels, rising; their rails hang below them
    std::string stock = "main";
    std::string posts = "main";  // the leaning ones
};

// Where the line of its back lies at a height.
Nm back_at(const LeaningShape& shape, Nm height);

// Left and right back post are called "leaning left" and "leaning right". The side rails of a shelf
// run to the line of the back there, its back rail stands in front of the posts.
model::Frame leaning_frame(std::string name, const LeaningShape& shape);

// One frame of one stock, shown in inches.
model::Project leaning_project(const LeaningShape& shape,
                               std::string section = "angle 1 x 1 x 1/8");

}  // namespace tests

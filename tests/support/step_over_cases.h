// Random frames with an obstacle that eats a notch out of them, for tests of stepping over.
#pragma once

#include "engine/geometry/box.h"
#include "model/project/edit.h"

#include <cstdint>
#include <string>

namespace tests {

struct StepOverCase {
    model::Project project;  // one frame, one obstacle
    model::StepOver edit;    // what stock and fasteners want is left to be worked out
    engine::Nm clearance = 0;
    engine::Nm apart = 0;  // least distance of the frame's planes, however far heads stand out
    std::string words;     // what was drawn
};

// Boxes with dividers and shelves, with and without bays, and stepped frames; turned and shifted;
// the obstacle a box, a wheel well or a cylinder that eats a notch of any kind.
StepOverCase step_over_case(std::uint32_t seed);

// The least box round a box, a wheel well or a cylinder, in the room.
engine::Box box_of_obstacle(const model::Project& project, const model::Obstacle& obstacle);

// The project with the dimensions that the obstacle stands on changed a little, so that its notch
// stays of the same kind and apart from the frame's planes.
model::Project with_obstacle_moved(const StepOverCase& it,
                                   const model::Project& stepped,
                                   std::uint32_t seed);

}  // namespace tests

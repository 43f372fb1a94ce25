// Random skeletons for property tests: boxes with shelves, dividers and mid rails, steps over a
// wheel well, tangles; one or mixed sections; inch and metric; several frames with quarter turns;
// panels on half of them.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"

#include <cstdint>
#include <string_view>

namespace tests {

enum class FrameShape {
    box,           // posts, rails, shelves, dividers, mid rails
    step,          // stepped over one wheel well, or notched over one in the middle
    started_box,   // what the program's own box starter leaves
    started_step,  // what its stepped starter leaves
    tangle,        // members on planes at random: hardly any joint that a maker would mean
};

std::string_view name_of(FrameShape shape);

// The same project for the same seed with every compiler. Its sections come from the catalogue.
struct RandomProject {
    model::Project project;
    FrameShape shape = FrameShape::box;  // of all its frames
    bool is_metric = false;
    bool is_mixed = false;  // several sections in one frame
};

RandomProject random_project(std::uint32_t seed, const model::Catalogue& catalogue);

}  // namespace tests

// The picture of a step of the assembly: what stands, what is new, and the numbers of its joints.
#pragma once

#include "engine/drawing/page.h"
#include "model/assembly/step_words.h"
#include "model/resolve/resolved.h"

#include <span>
#include <vector>

namespace model {

// `stands` are the pieces that are there at the end of the step; those of `is_new`, by piece, are
// drawn bold, with their marks beside the picture; dashed over the others where those hide them.
void draw_step_picture(engine::Page& page,
                       const engine::PageBox& box,
                       const Resolved& resolved,
                       const std::vector<Index>& stands,
                       const std::vector<bool>& is_new,
                       std::span<const StepJoint> joints);

// Round numbers of those radii, each at its place in the box or as near as the others and the box
// allow, and outside of what is kept free where there is room.
std::vector<engine::PagePoint> places_of_numbers(const std::vector<engine::PagePoint>& at,
                                                 const std::vector<double>& radii,
                                                 const engine::PageBox& box,
                                                 const std::vector<engine::PageBox>& kept_free);

}  // namespace model

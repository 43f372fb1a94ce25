// What is wrong with a frame that cannot be put together as it stands, in words. Only files of this
// folder use it.
#pragma once

#include "model/assembly/frame_steps.h"

#include <vector>

namespace model {

std::vector<Finding> assembly_problems(const Project& project,
                                       const FrameParts& parts,
                                       const TakenApart& taken,
                                       const std::vector<ShutIn>& shut_in);

}  // namespace model

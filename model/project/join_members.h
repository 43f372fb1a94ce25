// Two members in one line become one: see the edit JoinMembers.
#pragma once

#include "model/project/change.h"
#include "model/project/plane_places.h"

namespace model {

// Both must be there. The one is called `name`; where that is empty, as the edit has it. An Error
// leaves the frame as it was.
Changed join_members(Frame& frame,
                     const std::array<std::string, 2>& names,
                     const PlanePlaces& places,
                     const std::string& name = {});

}  // namespace model

// What is said of feet.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/finding.h"

#include <string>
#include <vector>

namespace model {

// A foot that cannot be made: of the member, at the plane.
struct FootAsked {
    Subject member;
    std::string plane;
};

Finding foot_not_square(const FootAsked& foot);
Finding foot_not_outside(const FootAsked& foot);
Finding foot_lacks_angle(const FootAsked& foot);
Finding foot_lacks_drill(const FootAsked& foot, const MachineScrew& screw);
Finding foot_has_no_room(const FootAsked& foot, const MachineScrew& screw);

// What to heed before the feet of a frame are fixed; `members` each once.
Finding feet_to_fix(std::vector<Subject> members,
                    std::size_t count,
                    const MachineScrew& screw,
                    const Drill& drill);

}  // namespace model

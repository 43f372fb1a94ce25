// Who lies outside whom, as far as it can be told from the lines that bars lie on.
#pragma once

#include "model/project/plane_places.h"

#include <array>
#include <string>
#include <vector>

namespace model {

// How many bars lie outside each member of the frame, one outside the other: what ends on another's
// span lies behind it, at a corner ranks tell, as resolve has it. Of two that cross the deeper one
// is parted. As in Frame::members.
std::vector<int> depths_of_members(const Frame& frame, const PlanePlaces& places);

// A member that another one parts where both pass, though before the edit it was the other way
// round, so that nothing there may hold the ends.
struct NewlyParted {
    std::string bar;
    std::string by;
    std::array<Nm, 3> at{};
};
std::vector<NewlyParted> newly_parted(const Frame& frame,
                                      const Frame& before,
                                      const PlanePlaces& places);

// Those where both met before the edit and neither was parted, and what meets the member there now
// has no legs to both sides that its parts could lie against.
std::vector<NewlyParted> newly_parted_loose(const Frame& frame,
                                            const Frame& before,
                                            const PlanePlaces& places);

}  // namespace model

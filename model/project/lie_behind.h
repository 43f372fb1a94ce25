// Who lies outside whom, as far as it can be told from the lines that bars lie on; and ranks for
// bars that would lie in the wrong layer.
#pragma once

#include "model/project/plane_places.h"

#include <array>
#include <optional>
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

// A bar that ends on the span of another one which the edit pushed in, so that it lies two layers
// in and what is cut back by it at its other end has little left to fasten.
struct PushedFar {
    std::string by;
    std::string bar;
};
std::optional<PushedFar> newly_pushed_far(const Frame& frame,
                                          const Frame& before,
                                          const PlanePlaces& places,
                                          Axis run);

// A bar that ends on another's span at one end, and at the other end lies before one of that run,
// would push what it meets there two layers in, where little is left to fasten. Where that came
// about by an edit the bar gets a rank behind the other one. `before`: the frame without the edit.
// Bars and neighbours that have a rank keep it.
void let_lie_behind(Frame& frame, const Frame& before, const PlanePlaces& places);

// Takes away the ranks that bars got in that way where there is nothing any more that they push in.
void drop_spent_ranks(Frame& frame, const Frame& before, const PlanePlaces& places);

}  // namespace model

// Ranks for bars that an edit would leave in the wrong layer.
#pragma once

#include "model/project/plane_places.h"

#include <optional>
#include <string>

namespace model {

// A bar of that run that ends on the span of one which got a rank by the edit, since others of the
// run push it in: the bar lies two layers in then, and what it cuts back at its other end has
// little left to fasten.
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

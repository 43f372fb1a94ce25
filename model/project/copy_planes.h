// The planes within a repeated bay that stand in its copies for its own: see the edit RepeatBay.
#pragma once

#include "model/project/repeat_bars.h"

#include <map>
#include <optional>
#include <utility>

namespace model {

// The plane that may stand for one of a copy, rather than a new one: one of the same position, or
// one at that place that another bay has brought. What else lies there does so by chance.
std::optional<std::string> plane_there(const Frame& frame,
                                       const Repeated& repeated,
                                       const Formula& position,
                                       Nm place,
                                       const PlanePlaces& places);

class CopyPlanes {
public:
    // `position_of(plane, copy)` gives the position of a plane's image within a copy.
    CopyPlanes(Frame& frame,
               const Repeated& repeated,
               const PlanePlaces& places,
               const std::function<Formula(const Plane&, int)>& position_of)
        : frame_{frame}, repeated_{repeated}, places_{places}, position_of_{position_of} {}

    // The plane of the copy that stands for one of the bay, which is put into the frame where it is
    // not there; a plane across another axis is its own.
    engine::Result<std::string> image(const std::string& plane, int copy);

private:
    std::string image_within(const std::string& plane, Nm at, int copy);

    Frame& frame_;
    const Repeated& repeated_;
    const PlanePlaces& places_;
    const std::function<Formula(const Plane&, int)>& position_of_;
    std::map<std::pair<std::string, int>, std::string> images_;  // of planes within the bay
};

}  // namespace model

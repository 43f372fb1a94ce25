// Bars of a bay that is repeated along an axis: see the edit RepeatBay.
#pragma once

#include "model/project/change.h"
#include "model/project/frame_bars.h"

#include <functional>
#include <string>
#include <vector>

namespace model {

// The bay, where it lies, and the planes at which it comes again.
struct Repeated {
    Axis axis = Axis::x;
    Bay bay;
    ReachBox box;
    Nm pitch = 0;
    std::vector<std::string> ends;  // planes where the bay and each of its copies end
    bool gives_way = false;         // another bay that began where it ends begins behind the last

    int times() const { return static_cast<int>(ends.size()) - 1; }
    Nm end(int copy) const { return box[index_of(axis)][1] + copy * pitch; }
};

// A member that was added, and the one that it is a copy of.
struct AddedMember {
    std::string name;
    std::string original;
};

// Adds the bars of the copies to the frame and lets those run on that end where the bay does.
// `position_of(plane, copy)` gives the position of a plane's image within a copy.
Changed repeat_bars(Frame& frame,
                    const Repeated& repeated,
                    const PlanePlaces& places,
                    const std::function<Formula(const Plane&, int)>& position_of);

}  // namespace model

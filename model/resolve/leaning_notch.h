// Makes way for a leaning member: a level one that ends behind it keeps its leg along the face, and
// its other legs are notched back.
#pragma once

#include "model/resolve/leaning_place.h"

#include <vector>

namespace model {

// Of the members whose walls in the face it lies over; laps on what is notched away are cut back
// too, and left out where nothing of them stays. What cannot be notched stays in the way.
void notch_for_leaning(const PartRoom& room,
                       const BraceLine& line,
                       const BraceFace& face,
                       const PlacedLeaning& leaning,
                       FrameSkeleton& skeleton,
                       std::vector<Lap>& laps);

}  // namespace model

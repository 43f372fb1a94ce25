// Where planes of a frame change their order between two values of a dimension. Only files of this
// folder use it.
#pragma once

#include "model/room/band_look.h"
#include "model/room/band_search.h"

#include <array>
#include <set>

namespace model {

// For each such place the mark that is nearest to it and the ones on both sides of that, as far as
// they lie between the two of the gap. Found as if all planes moved evenly.
std::set<TapeMark> crossings(std::array<TapeMark, 2> gap,
                             const BandLook& before,
                             const BandLook& after);

}  // namespace model

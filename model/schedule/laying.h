// How a piece lies on the drill press, so that a hole's leg, distance and gauge leave no doubt
// about which of two mirror images is meant.
#pragma once

#include "model/resolve/resolved.h"

namespace model {

enum class TableEnd { left, right };

// The wall that is drilled lies flat on its outer face, with the heel against the fence, away from
// the maker; the other leg of an angle then stands up along the fence. Tells at which hand the
// datum end is.
TableEnd datum_end_on_table(const Piece& piece, std::uint8_t wall);

}  // namespace model

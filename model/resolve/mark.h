// Identical pieces share a mark; mirror images share it as opposite hands.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

namespace model {

// Fills Resolved::marks and every piece's mark, hand, datum, run and holes' distances, so that all
// pieces of a mark read alike.
//
// A mark is a letter for the stock (shims: S) and the number of the first member of its kind among
// all members of that stock, in the order in which they stand in the project; a later piece of a
// split member adds a letter ("A5b"). So a mark changes only when its own pieces become like or
// unlike an earlier one, or when members are added or taken out before it, never with a dimension
// that does not concern it.
void mark_pieces(const Project& project, const Catalogue& catalogue, Resolved& resolved);

}  // namespace model

// Identical pieces share a mark; mirror images share it as opposite hands.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

namespace model {

// Fills Resolved::marks and every piece's mark, hand, datum, run, ends and holes' distances, so
// that all pieces of a mark read alike; those with an outline then share it. Parts of sheet are
// read along their longer side.
//
// The mark of a bar is a letter for the stock and the number of the first member of its kind among
// all members of that stock, in the order in which they stand in the project; a later piece of a
// split member adds a letter ("A5b"). The mark of another part is two letters for its kind (shims:
// S) and the number of its first piece among all pieces of that kind ("CL3"). So a mark changes
// only when its own pieces become like or unlike an earlier one, or when members or parts of its
// kind are added or taken out before it, never with a dimension that does not concern it.
void mark_pieces(const Project& project, const Catalogue& catalogue, Resolved& resolved);

}  // namespace model

// Lets the side of a frame that faces a wall lean with it.
#pragma once

#include "engine/result.h"
#include "model/catalogue/catalogue.h"
#include "model/project/edit.h"
#include "model/resolve/resolved.h"

#include <string>
#include <vector>

namespace model {

// The edits that do it, in order. The posts on that side become leaning members whose foot stays
// where it is and whose top comes in as far as the wall does over their height, rounded up to a
// mark of the tape, so that the gap at the foot is kept all the way up. Rails of the top move in
// with them; those of other levels end at the line of the posts, or run inside of it; bays end at
// their rails. How far the top comes in is a dimension on which the new planes stand.
//
// `resolved` is that of the project. Error (invalid_value): no such frame, an obstacle that is no
// wall profile or has no shape, a side without posts of angle or with what cannot lean (a panel, a
// brace), a wall that does not lean in over the height of the posts or by more than 45 degrees, a
// frame that is too shallow for it.
engine::Result<std::vector<Edit>> lean_with_wall(const Project& project,
                                                 const Catalogue& catalogue,
                                                 const Resolved& resolved,
                                                 const std::string& frame,
                                                 const std::string& wall);

}  // namespace model

// How large a part of sheet is; its length is the piece's own.
#pragma once

#include "model/resolve/resolved.h"

namespace model {

Nm sheet_thickness(const Piece& piece);

// Across its run in its own plane, from the heel side: as far as its outline reaches.
Nm sheet_width(const Resolved& resolved, const Piece& piece);

}  // namespace model

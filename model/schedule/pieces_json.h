// pieces.json: every piece in its place, for other programs and for independent checking.
//
// All lengths are millimetres, exact decimals; all places are in the room (X across, Y along, Z
// up). A plate is its outline in (u, v) times [0, thickness] along n, at origin + u*U + v*V + w*N:
//   u  along the piece from its datum end      v  across the wall from the heel side
//   n  from the wall's outer face into the metal
// `origin` is on the outer face, at the datum end, where v is zero at the heel; so a hole's `at` is
// the same pair as from_datum and gauge in the drill schedule. `datum` is the heel corner of the
// datum end, `run` points along the piece. Rounded inner corners are no plates. Ids ("P1" piece,
// "H1" hole, "J1" joint, "F1" fastener) hold within one file.
//
// A fastener is `at` the outer face of the first plate of its stack, under its head; `axis` points
// from there through the stack; `head_side` is the piece under the head.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <string>

namespace model {

std::string pieces_json(const Project& project,
                        const Catalogue& catalogue,
                        const Resolved& resolved);

}  // namespace model

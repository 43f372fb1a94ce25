// pieces.json: every piece in its place, for other programs and for independent checking.
//
// All lengths are millimetres, exact decimals; all places are in the room (X across, Y along, Z
// up). A plate is its outline in (u, v) times [0, thickness] along n, at origin + u*U + v*V + w*N:
//   u  along the piece from its datum end      v  across the wall from the heel side
//   n  from the wall's outer face into the metal
// `origin` is on the outer face, at the datum end, where v is zero at the heel; so a hole's `at` is
// the same pair as from_datum and gauge in the drill schedule. Where an edge is bevelled,
// `outline_far` is the outline on the inner face, corner for corner; `cut_outs` (and
// `cut_outs_far`) are openings within it. Outlines run counter-clockwise with u to the right and v
// upward, cut-outs clockwise. `datum` is the heel corner of the datum end, `run` points along the
// piece. Rounded inner corners are no plates. Ids ("P1" piece, "H1" hole, "J1" joint, "F1"
// fastener) hold within one file.
//
// A sloping end has a cut in `cuts`: the plane through the place `at` (mm along `run` from the
// datum) across the direction `across`, which points out of the metal and is no unit vector. The
// corners of outlines that a slope cuts are rounded to nanometres, the cut is not. Directions and
// origins of pieces that lie along no axis of the room have as many digits as a double holds.
//
// A hole for fixing to the van has no `joint` and no `fastener`.
//
// The pieces of a joint are the two that touch, with a shim between them, and then a brace on one
// of them through which their fasteners go too. Of a brace, `at` of a hole is rounded to
// nanometres.
//
// A fastener is `at` the outer face of the first plate of its stack, under its head; `axis` points
// from there through the stack; `head_side` is the piece under the head. Of a screw, `hold`
// is what holds it ("tapped", "nut", "rivet nut"). A hole with `tap` is drilled to `diameter` and
// then threaded for that screw.
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

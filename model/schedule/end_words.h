// What the saw must do at the end of a piece, in a maker's words.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <array>
#include <string>

namespace model {

// What pieces are told apart by: cuts at the saw and ticks at the bench are kept with these words,
// by ends_text, so they never change.
// At the datum end and at the far end: "square"; "mitre 45 deg across leg a, long point at the
// heel"; "square; leg a notched back 1 1/32 in"; "to its outline" where no one cut makes it.
// Angles are what the saw is set to, off square.
std::array<std::string, 2> end_words(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     const Piece& piece);

// The same for who reads them, not to be told apart by: what lies on no mark of the tape has its
// millimetres beside it, "leg a notched back ~1 1/32 in (26.31 mm)".
std::array<std::string, 2> told_end_words(const Project& project,
                                          const Catalogue& catalogue,
                                          const Resolved& resolved,
                                          const Piece& piece);

// What a saw's scale is set to for a cut that recedes by so much for each length across: "45",
// "36.9", to a tenth of a degree.
std::string saw_degrees_text(double slope);

}  // namespace model

// What is to be done to a piece, or why it is spoiled, in a maker's words.
#pragma once

#include "model/bench/blank_fit.h"

#include <string>
#include <vector>

namespace model {

// Empty for one that is right.
std::vector<std::string> words_of_fit(const Project& project,
                                      const Catalogue& catalogue,
                                      const Resolved& resolved,
                                      Index piece,
                                      const MadePiece& wanted,
                                      const BlankFit& fit);

}  // namespace model

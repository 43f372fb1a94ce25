// Keeps the fasteners of neighbouring laps out of one another's way, above all the tails in the
// corner of an angle.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/fasten.h"
#include "model/resolve/gauge_lines.h"
#include "model/resolve/resolved.h"

#include <array>
#include <span>
#include <vector>

namespace model {

// Two laps, or the joints made of them, by number; the smaller first.
using LapPair = std::array<Index, 2>;

// Moves the centres of laps whose fasteners meet those of another lap on the same piece, within the
// freedom of their layout: onto gauge lines that are in use before others, and then as little as
// will do. `stocks_alike` as by
// first_stocks_alike. Gives the pairs that meet all the same, in order.
std::vector<LapPair> keep_apart(const Catalogue& catalogue,
                                std::span<const LapPlan> plans,
                                std::span<const Piece> pieces,
                                std::span<const Index> stocks_alike,
                                std::vector<Centres>& centres);

// A finding `fasteners_meet` for each pair.
void report_fasteners_that_meet(const Project& project,
                                std::span<const LapPair> joints,
                                Resolved& resolved);

}  // namespace model

// The order in which a maker drills: which holes share a drill and a fence setting.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"
#include "model/schedule/pieces_by_mark.h"

#include <cstdint>
#include <vector>

namespace model {

// One line of the drill schedule: a hole of the pattern piece of a mark and hand.
struct DrillStep {
    std::uint32_t group = 0;  // in pieces_by_mark
    std::uint32_t hole = 0;   // among the piece's holes
    int number = 0;           // on the mark, from 1: leg by leg, along the piece from the datum end
    int setup = 0;            // number of the fence setting, from 1 in order of use
    bool is_tapping = false;  // the thread is cut in a hole that another step drills
};

// At the drill press first: by drill, smallest first, then by gauge, then by section, mark and
// hand, then along the piece. After that what is done with the parts put together (match-drilling),
// and last what needs no drill press (countersinking, tapping).
std::vector<DrillStep> drill_order(const Catalogue& catalogue,
                                   const Resolved& resolved,
                                   const std::vector<MarkGroup>& groups);

}  // namespace model

// The settings of the stop as they are worked off: what has been cut stays in its place.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/schedule/saw_bars.h"

#include <string>
#include <vector>

namespace model {

// Pieces of one mark and hand from one bar at one setting, all cut or all still to be cut.
struct StopWork {
    int setting = 0;  // from 1, as StopRow, with what has been cut
    Index stock = 0;
    std::string section;
    engine::Length length;
    std::string ends;
    int bar = 0;  // SawBar::number
    std::string mark;
    Hand hand = Hand::none;  // none where both ends are square
    int opposite = 0;        // how many of them are of the opposite hand, which is written on them
    bool is_made = false;
    std::vector<SawTick> cuts;
};

// Of bars that are done with nothing is told any more, and of spoiled pieces neither.
std::vector<StopWork> stop_work(const Project& project,
                                const Catalogue& catalogue,
                                const Resolved& resolved,
                                const std::vector<SawBar>& bars);

}  // namespace model

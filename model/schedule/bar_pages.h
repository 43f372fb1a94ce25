// The bars on paper: each to scale with its cuts and its offcut, then the settings of the stop.
#pragma once

#include "engine/drawing/document.h"
#include "model/schedule/saw_bars.h"
#include "model/schedule/stops.h"

#include <string>
#include <vector>

namespace model {

struct BarPageWords {
    std::string title;    // "Bars: Work counter"
    std::string verdict;  // "109.50 crowns, proven cheapest"
};

// Landscape pages, not numbered yet: see number_pages. Boxes are to be ticked with a pen; what has
// been cut already is ticked.
engine::Document bar_pages(const Project& project,
                           const Resolved& resolved,
                           const std::vector<SawBar>& bars,
                           const std::vector<StopRow>& stops,
                           const BarPageWords& words,
                           engine::Paper paper);

// All bars on one page that is as high as they need, mm.
engine::Page bar_picture(const Project& project,
                         const Resolved& resolved,
                         const std::vector<SawBar>& bars,
                         const BarPageWords& words);

}  // namespace model

// The search behind a band: values are looked at, and gaps between them proved or looked into.
#pragma once

#include "model/room/band.h"

#include <cstdint>

namespace model {

using TapeMark = std::int64_t;  // a value is so many steps

struct MarkRange {
    TapeMark from = 0;
    TapeMark to = 0;          // and no less than `from`
    bool ends_below = false;  // by the dimension's own least
    bool ends_above = false;
};

// `dimension` of the project is looked at over the range; all must outlive the search.
struct BandSearch {
    const Project& project;
    const Catalogue& catalogue;
    const ScanLibrary& scans;
    std::string_view dimension;
    MarkRange range;
    Nm step = 0;
    const std::function<bool()>& go_on;
};

// Fills in what was found, for the value that the band states. False when told to stop.
bool search_band(const BandSearch& search, Band& band);

}  // namespace model

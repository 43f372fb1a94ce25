// How far a dimension may go: the values for which everything fits.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"
#include "model/room/scans.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace model {

// What ends an interval: a finding that the next mark beyond it brings.
struct BandStop {
    bool is_of_search = false;  // nothing does: the search went no further
    std::string by;             // "wheel well left", "post mid + rail front", "its most"
    Finding finding;

    bool operator==(const BandStop&) const = default;
};

// Both ends fit; beyond each of them, the next mark does not.
struct BandInterval {
    Nm from = 0;
    Nm to = 0;
    BandStop below;
    BandStop above;

    bool operator==(const BandInterval&) const = default;
};

struct Band {
    std::string dimension;
    Nm value = 0;
    bool fits_now = false;
    Nm searched_from = 0;  // marks were looked at from here
    Nm searched_to = 0;
    std::vector<BandInterval> intervals;  // rising
    // Where no value is free of faults: what is wrong at the best of them, and so is left out of
    // account at the others too.
    std::vector<Finding> regardless;
    std::vector<Finding> not_measured;  // scans that are not read: nothing is known of them
    int looked_at = 0;                  // values that were resolved
    bool is_proved =
        true;  // otherwise there was too much to look at: something small may be missed

    bool operator==(const Band&) const = default;
};

// Marks on which ends of bands lie: 1/64 in, on a metric tape 1/2 mm.
Nm band_step(const engine::TapeStyle& shown);

// Whether a finding keeps a value from fitting: errors, and of the warnings those of clearance,
// gaps between frames, loose ends, openings that are too low, and limits.
bool keeps_from_fitting(const Finding& finding);

// The project with the dimension at that length.
Project with_dimension(Project project, std::string_view dimension, Nm value);

// Solved, not sampled alone: between two values looked at that both fit, it is proved that nothing
// comes too near to an obstacle or to another frame, as long as what lies in the room moves evenly
// between them; where it is not, they are looked at again in between. So are those where layout
// planes of a frame meet. What else may go wrong within a frame, what is in a drawer's way, and
// where the frame binds in a measured opening is looked for at 25 values of the range and at all
// these. Ends are found by halving.
// The range searched: the dimension's own least and most; else from the first mark above 0 to three
// times its value or 2 ft more than that, whichever is longer. Nothing where the dimension is
// missing, no length, does not work out, or where `go_on` (may be empty) answers false.
std::optional<Band> band_of(const Project& project,
                            const Catalogue& catalogue,
                            const ScanLibrary& scans,
                            std::string_view dimension,
                            const std::function<bool()>& go_on = {});

// Something stands in an obstacle whatever the value: what `intervals` hold fits but for that.
bool fits_nowhere(const Band& band);

// The largest and the least value of the interval that holds the present one, or else of the
// nearest; rounded inward to the tape, where a mark lies inside. None where it fits nowhere.
std::optional<Nm> largest_that_fits(const Band& band, const engine::TapeStyle& shown);
std::optional<Nm> least_that_fits(const Band& band, const engine::TapeStyle& shown);

}  // namespace model

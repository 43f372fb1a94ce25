// What fastening has to say: each finding with its numbers and its mend.
#pragma once

#include "model/resolve/fastener_choice.h"
#include "model/resolve/finding.h"

#include <string>
#include <vector>

namespace model {

Finding no_fastener(const NoFastener& why, Subject joint);

// Of `wanted` fasteners only `fits` have room in a lap.
struct TooFew {
    const FastenerChoice& choice;
    Index fits = 0;
    Index wanted = 0;
    Index on_half_marks = 0;  // how many would fit on marks half as far apart
};

// A thinner fastener of which `count` would fit; empty: none helps.
struct SmallerFastener {
    std::string id;
    int count = 0;
};

Finding too_few_fasteners(const Catalogue& catalogue,
                          const TooFew& few,
                          const SmallerFastener& smaller,
                          Subject joint);

Finding long_nose(std::vector<Subject> joints);

// Rivets thinner than the thickest plate that they hold.
Finding thin_rivet(std::vector<Subject> joints);

}  // namespace model

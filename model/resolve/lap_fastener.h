// Which fastener suits a lap: by what is wished for and how thick its walls are.
#pragma once

#include "model/resolve/fastener_choice.h"
#include "model/resolve/lap_layout.h"
#include "model/resolve/screw_choice.h"

#include <vector>

namespace model {

Nm thickness_of(const Plate& plate);

class LapFasteners {
public:
    LapFasteners(const Catalogue& catalogue, const Shop& shop)
        : catalogue_{catalogue}, shop_{shop} {}

    // The lower wall is the far one unless said otherwise; where it has no fastener, the upper one
    // may have.
    FastenerAnswer choose(const LapSite& site, const FastenerWish& wish);

    FastenerAnswer choose(const LapSite& site, const FastenerWish& wish, bool upper_is_far);

private:
    struct KnownAnswer {
        Nm thickest = 0;
        StackSizes sizes;
        MeasureSystem system = MeasureSystem::inch;
        FastenerWish wish;
        FastenerAnswer answer;
    };

    const FastenerAnswer& remembered_answer(const FastenerWish& wish,
                                            MeasureSystem system,
                                            Nm thickest,
                                            const StackSizes& sizes);

    const Catalogue& catalogue_;
    const Shop& shop_;
    std::vector<KnownAnswer> known_;
};

}  // namespace model

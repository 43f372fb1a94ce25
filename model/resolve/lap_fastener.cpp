#include "model/resolve/lap_fastener.h"

#include <algorithm>

namespace model {

Nm thickness_of(const Plate& plate) {
    return plate.box.hi[plate.normal_axis] - plate.box.lo[plate.normal_axis];
}

FastenerAnswer LapFasteners::choose(const LapSite& site, const FastenerWish& wish) {
    auto answer = choose(site, wish, false);
    return answer.choice ? answer : choose(site, wish, true);
}

FastenerAnswer LapFasteners::choose(const LapSite& site,
                                    const FastenerWish& wish,
                                    bool upper_is_far) {
    const Nm upper = thickness_of(site.upper.plates[site.lap.upper_wall]);
    const Nm lower = thickness_of(site.lower.plates[site.lap.lower_wall]);
    const bool cover_is_far = site.cover != nullptr && site.lap.covers_upper == upper_is_far;
    const Nm cover = site.cover == nullptr ? upper : thickness_of(site.cover->plates[0]);
    const StackSizes sizes{.total = stack_of(site),
                           .thinnest = std::min({upper, lower, cover}),
                           .far = cover_is_far   ? cover
                                  : upper_is_far ? upper
                                                 : lower};
    const Piece& of_bar = site.upper.section == no_index ? site.lower : site.upper;
    return remembered_answer(wish, catalogue_.sections[of_bar.section].system,
                             std::max({upper, lower, cover}), sizes);
}

// Laps of one project ask for a handful of different fasteners.
const FastenerAnswer& LapFasteners::remembered_answer(const FastenerWish& wish,
                                                      MeasureSystem system,
                                                      Nm thickest,
                                                      const StackSizes& sizes) {
    for (const auto& known : known_) {
        if (known.thickest == thickest && known.sizes == sizes && known.system == system &&
            known.wish == wish) {
            return known.answer;
        }
    }
    known_.push_back(
        {thickest, sizes, system, wish,
         wish.is_screw ? choose_screw(catalogue_, shop_, wish, system, sizes)
                       : choose_rivet(catalogue_, shop_, wish.id, system, thickest, sizes.total)});
    return known_.back().answer;
}

}  // namespace model

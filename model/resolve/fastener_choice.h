// Which fastener a lap gets: what the joint says, else what the shop says, else by the plates'
// thickness; and its grip by the stack.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <string_view>

namespace model {

// A blind rivet with the footprints that keep other metal away from it.
struct RivetChoice {
    const BlindRivet* rivet = nullptr;
    const RivetGrip* grip = nullptr;   // null: none is long enough
    const Drill* drill = nullptr;      // null: none at hand makes the hole
    bool drill_is_substitute = false;  // not the usual one
};

RivetChoice choose_rivet(const Catalogue& catalogue,
                         const Shop& shop,
                         std::string_view wanted_id,
                         MeasureSystem system,
                         Nm thickest,
                         Nm stack);

// The next thinner rivet of the same system; null when there is none.
const BlindRivet* next_thinner(const Catalogue& catalogue, const BlindRivet& rivet);

// Clear radius about the formed tail: 0.75 D + 1/32 in. Common practice; tried with the layout
// rules.
Nm tail_radius(const BlindRivet& rivet);

// How far the unset rivet reaches beyond the stack on the blind side, at most.
Nm blind_reach(const BlindRivet& rivet, const RivetGrip& grip, Nm stack);

}  // namespace model

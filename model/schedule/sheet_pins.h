// Temporary sheet pins: how many of which size hold the parts for the dry fit.
#pragma once

#include "model/catalogue/catalogue.h"

#include <string>

namespace model {

// Every third hole of a joint and at least two, never more than it has holes. Common practice is
// every second to fourth hole and at least two in a joint, corners first (from memory: no page
// that was read gives a count).
int pins_in_joint(int holes);

// The pin that goes into the rivet's hole: nearest to the hole's size within 1/4 mm (a pin
// spreads in its hole; the tolerance is from memory), with the shortest grip that holds the
// stack, or the longest there is. Null where no size fits.
const SheetPin* pin_for(const Catalogue& catalogue, const BlindRivet& rivet, engine::Length stack);

// "sheet pin 1/8"; "sheet pin 1/8, long" for a stack that no pin of the catalogue holds.
std::string pin_name(const SheetPin& pin, engine::Length stack);

}  // namespace model

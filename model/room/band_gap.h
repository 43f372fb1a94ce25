// What may happen between two values of a dimension that were looked at. Only files of this folder
// use it.
#pragma once

#include "model/room/band_look.h"

namespace model {

// Whether nothing comes too near to an obstacle or to another frame between two looks that both
// fit, what lies in them moving evenly from one to the other: straight on and at one pace, as it
// does where formulas are sums of the dimension and other values. False where that is not proved:
// because something may, or because the two cannot be compared.
//
// Two things are apart at every moment between if one plane parts them at both ends (what is
// furthest along a direction moves no slower than evenly), or if they are further apart than they
// move. What is too near at one end although it fits there is so whatever the value, and is passed
// over.
bool is_surely_free(const BandLook& a, const BandLook& b, double reach_mm);

// Whether two looks hold the same things, so that they can be compared.
bool are_alike(const BandLook& a, const BandLook& b);

}  // namespace model

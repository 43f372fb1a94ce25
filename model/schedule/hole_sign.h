// What a hole is for, as drawings tell it apart by lines alone.
#pragma once

#include "model/resolve/resolved.h"

namespace model {

enum class HoleSign { rivet, tapped, screw, rivet_nut, countersunk, van };

HoleSign sign_of(const Resolved& resolved, const Hole& hole);

// "rivet", "tapped", "screw through", ...
const char* words_of(HoleSign sign);

}  // namespace model

// Bars that count as bought since a piece of them was cut, once that cut is taken back.
#pragma once

#include "model/buying/purchases.h"

namespace model {

// One that counts and was noted when a piece was cut, and of whose bars a piece was cut or spoiled
// before and none is after; null where there is none. Bars that were planned anew since lie at home
// and are nobody's.
const Purchase* purchase_left_uncut(const Purchases& bought,
                                    const Project& before,
                                    const Project& after);

}  // namespace model

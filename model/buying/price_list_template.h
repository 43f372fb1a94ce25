// A price list that is begun for the user: all that a project needs, still without prices.
#pragma once

#include "model/buying/price_list.h"
#include "model/resolve/resolved.h"

#include <string>

namespace model {

// Every bar that pieces are cut from in the lengths that its stock states, or in one usual length;
// every sheet in one usual size; every fastener, nut and pin by the box of 100 or by the piece.
PriceList needed_goods(const Project& project,
                       const Catalogue& catalogue,
                       const Resolved& resolved);

// The same as the text of a file; read_price_list gives needed_goods back.
std::string price_list_template(const Project& project,
                                const Catalogue& catalogue,
                                const Resolved& resolved);

}  // namespace model

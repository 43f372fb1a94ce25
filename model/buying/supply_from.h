// Which bars a supplier offers of a stock.
#pragma once

#include "model/buying/price_list.h"
#include "model/resolve/resolved.h"

#include <vector>

namespace model {

// The supplier's bars of the stock's section and alloy, with what the project has at home and on
// the rack. Fetched: none longer than what can be brought home; delivered: none longer than what is
// delivered, where the list says so. A longer bar comes as two halves where the supplier cuts it:
// each as long as the saw leaves it (the shop's kerf stands for the supplier's), at half the price
// of bar and cut together, rounded up to the cent. Bars that cannot come home at all are in
// `not_home`, and so are those without a price where others of the stock have one.
BarSupply supply_from(const PriceList& prices,
                      const Supplier& supplier,
                      const Project& project,
                      const Resolved& resolved,
                      const Stock& stock);

// What stands in the list and is not used for this project, with its line and why: rows that the
// catalogue does not know, bars of its stock that cannot come home or lack a price, free cuts
// without a fee. Goods that the project does not need are no fault of the list.
std::vector<engine::Error> rows_not_used(const PriceList& prices,
                                         const Supplier& supplier,
                                         const Project& project,
                                         const Resolved& resolved);

}  // namespace model

// Which bars a supplier offers of a stock.
#pragma once

#include "model/buying/price_list.h"
#include "model/resolve/resolved.h"

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

}  // namespace model

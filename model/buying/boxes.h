// Which boxes of fasteners hold what is needed, at the least cost.
#pragma once

#include "model/buying/price_list.h"
#include "model/schedule/tables.h"

#include <string>
#include <vector>

namespace model {

struct BoxesOf {
    int in_one = 1;  // how many in a box
    std::optional<Cents> price;
    int boxes = 0;

    bool operator==(const BoxesOf&) const = default;
};

struct BoxChoice {
    std::string fastener;
    int needed = 0;
    int spares = 0;
    std::vector<BoxesOf> bought;  // the largest first; none where the list has no such box
    int missing = 0;              // of needed and spares, which the boxes that can be had lack
    int over = 0;                 // bought beyond needed and spares
    std::optional<Cents> cost;    // none where no price is known

    bool operator==(const BoxChoice&) const = default;
};

// Of all ways to buy at least so many the cheapest, then the one with the fewest over, then with
// the fewest boxes; exactly. Boxes with a price come before those without: these serve only where
// none has one, and then the fewest over count first.
BoxChoice boxes_for(const std::string& fastener,
                    int needed,
                    int spares,
                    const std::vector<BoxPrice>& offered);

// One for each row. With no list each fastener is bought in no box.
std::vector<BoxChoice> box_choices(const std::vector<FastenerRow>& rows, const PriceList* prices);

}  // namespace model

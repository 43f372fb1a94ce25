// Choices one below the other, each with what it would cost; the one in force is marked.
#pragma once

#include "editor/choice_price.h"

#include <string>
#include <vector>

namespace editor {

struct PriceRowsLook {
    std::string group;  // rows are called "GROUP: CHOICE"
    std::string about;  // what is chosen for: prices of one group and one such thing are kept
    std::string here;   // a place that warnings need not name: "counter: joint post + rail top"
};

// The choice that was clicked and is not in force; null when none was.
const Choice* draw_price_rows(const PriceRowsLook& look,
                              const std::vector<Choice>& choices,
                              const Derived& now,
                              const model::Catalogue& catalogue,
                              PriceBoard& board);

}  // namespace editor

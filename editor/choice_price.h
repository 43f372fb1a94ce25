// What each way to go on would cost: pieces, holes, fasteners, weight and findings. Found out by
// working the whole project out with it, one choice after another, so that the window never stops.
#pragma once

#include "editor/derived.h"
#include "model/catalogue/catalogue.h"
#include "model/project/edit.h"
#include "model/resolve/finding.h"
#include "model/schedule/tally.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace editor {

struct Choice {
    std::string name;                // stable, on the row: "flush"
    std::string what;                // one sentence
    std::string label;               // for the undo list: "Flush at post left + rail top"
    std::vector<model::Edit> edits;  // none: it is chosen already
    bool is_now = false;
};

struct PriceWarning {
    std::string where;  // "counter: joint post left + rail top"
    std::string what;   // with the mend
    bool is_error = false;
};

struct Price {
    int pieces = 0;  // more than now; below zero: fewer
    int holes = 0;
    int fasteners = 0;
    double weight_kg = 0.0;
    std::string parts;    // the same by kind: "+4 gussets, +16 rivets 1/8"
    std::string lengths;  // what becomes longer or shorter: "4 x-rails 1/4 in shorter"
    std::vector<model::Finding> brings;  // errors and warnings that are not there now
    std::vector<PriceWarning> warnings;  // the same in words, those that say the same together
    int mends = 0;                       // how many of those that are there now would be gone
    std::string refused;                 // why it cannot be chosen at all; empty when it can
};

Price price_of(const Derived& now, const model::Catalogue& catalogue, const Choice& choice);

// Prices of one state of the project, kept by what is chosen and by the choice's name.
struct PriceBoard {
    std::optional<WorkedOutOf> of;
    std::map<std::string, std::map<std::string, Price>> prices;
    bool may_work = true;   // in this frame
    bool has_more = false;  // some that were asked for are still to be worked out
};

// At the beginning of a frame. `may_work`: false while the user is in the middle of a movement.
void begin_prices(PriceBoard& board, const Derived& now, bool may_work);

// The price where it is known. At most one is worked out in a frame.
const Price* price_on(PriceBoard& board,
                      const std::string& about,
                      const Derived& now,
                      const model::Catalogue& catalogue,
                      const Choice& choice);

}  // namespace editor

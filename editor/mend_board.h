// Which mends the findings of the window have: tried one after another while nothing else is to be
// done, so that the window never stops and a button is shown only where it helps.
#pragma once

#include "editor/band_worker.h"
#include "editor/choice_price.h"
#include "editor/derived.h"
#include "model/mend/mend.h"

#include <cstddef>
#include <map>
#include <optional>
#include <vector>

namespace editor {

struct UntriedWay {
    model::Mend way;
    bool is_for_all =
        false;  // else it mends the first of the findings, and is still to be extended
};

// Of the findings on one card.
struct CardMends {
    std::vector<UntriedWay> untried;  // the next one last
    std::vector<model::Mend> kept;    // they do what they promise
    bool has_begun = false;
    int tried = 0;  // how many ways there were that could be for all of them

    bool is_done() const { return has_begun && untried.empty(); }
};

struct MendBoard {
    std::optional<WorkedOutOf> of;
    std::map<std::size_t, CardMends> cards;  // by finding group
    PriceBoard prices;                       // what each would come to, while it is pointed at
    bool may_work = true;                    // in this frame
    bool has_more = false;                   // some are still to be tried
};

// At the beginning of a frame. `may_work`: false while the user is in the middle of a movement.
void begin_mends(MendBoard& board, const Derived& now, bool may_work);

// What is known now; tries at most one in a frame. `bands` may be null: where one is there, the end
// of a dimension's band is tried too.
const CardMends& mends_on(MendBoard& board,
                          std::size_t group,
                          const Derived& now,
                          const model::Catalogue& catalogue,
                          const BandWorker* bands);

// The findings of a group, by value.
std::vector<model::Finding> findings_in(const Derived& now, std::size_t group);

}  // namespace editor

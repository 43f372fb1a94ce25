// What is done to cuts at the saw, as changes.
#pragma once

#include "editor/places/saw_list.h"

#include <vector>

namespace editor {

// What the pointer may do with cuts.
struct CutHands {
    const Derived& derived;
    const model::Catalogue& catalogue;
    SawListState& state;
    Selection& selection;
};

// None where it is refused, with the reason in the state. What was said of a spoiled piece is said
// no more once it is cut again and the bad one has its place.
std::optional<Change> ticked(const Derived& derived,
                             const model::Catalogue& catalogue,
                             SawListState& state,
                             const std::vector<model::SawTick>& ticks,
                             model::CutState to);

// What ticking those does besides, to stand behind what it does: that bars which are still to buy
// count as bought then, and of which other stocks. Empty where nothing is bought.
std::string bought_by_tick(const Derived& derived, const std::vector<model::SawTick>& ticks);

// What a click on their box does.
std::string tick_hint(const Derived& derived,
                      const std::vector<model::SawTick>& ticks,
                      bool is_made);

// One was cut wrong: what to do now is said from then on.
std::optional<Change> spoiled(const Derived& derived,
                              const model::Catalogue& catalogue,
                              SawListState& state,
                              const model::SawTick& tick);

// The same of the cut that next_cut_ticked would tick.
std::optional<Change> next_cut_spoiled(const Derived& derived,
                                       const model::Catalogue& catalogue,
                                       SawListState& state);

}  // namespace editor

// The bars as they lie at the saw: what has been cut from each, what is still to be cut, and what
// is left of it.
#pragma once

#include "model/schedule/bar_plan.h"
#include "model/schedule/bar_work.h"

#include <optional>
#include <string>
#include <vector>

namespace model {

struct SawCut {
    Index piece = no_index;  // none: spoiled, or of no use any more
    std::string mark;
    engine::Length length;  // of a spoiled one what was measured
    engine::Length start;   // from the bar's datum end
    engine::Length taken;   // off the bar, the kerf not counted
    CutState state = CutState::planned;
    std::optional<CutPlace> place;  // none: it stands in no project yet
    Hand hand = Hand::none;
};

struct SawBar {
    int number = 0;   // from 1, as BarRow::bar
    Index stock = 0;  // in the project
    std::string section;
    engine::Length length;
    BarFrom from = BarFrom::shop;
    std::optional<Cents> price;
    bool is_used_up = false;
    engine::Length
        halved_from;           // of one that the supplier cuts in half: its whole length; else zero
    std::vector<SawCut> cuts;  // in order from the datum end
    engine::Length offcut;     // what is left behind the last of them
};

// Where it ends on its bar.
inline engine::Length end_of(const SawCut& cut) { return cut.start + cut.taken; }

// All bars of the plans, those that are cut up included.
std::vector<SawBar> saw_bars(const Project& project,
                             const Catalogue& catalogue,
                             const Resolved& resolved,
                             const std::vector<BarPlan>& plans);

// A cut of a bar, both counted as in saw_bars.
struct SawTick {
    int bar = 0;          // SawBar::number
    std::size_t cut = 0;  // in SawBar::cuts
};

// The stocks whose bars count as bought once those cuts are ticked, of which the first are those of
// the cuts. A plan is bought at once: who cuts from a bar that is to be bought has been at the shop
// for all bars of its stock. The seller gives whole bars: the stock that gets the other half of one
// comes too, see odd_halves, with all of its bars again, and whoever shares one of those. Who cuts
// from an offcut need not have been there.
std::vector<Index> stocks_bought_by(const Project& project,
                                    const std::vector<SawBar>& bars,
                                    const std::vector<SawTick>& ticks);

// Where cuts_ticked puts a cut when it is ticked with those.
CutPlace place_when_ticked(const Project& project,
                           const std::vector<SawBar>& bars,
                           const SawTick& tick,
                           const std::vector<SawTick>& with);

// What was done to these cuts. One that stands in no project yet brings its stock's plan with it,
// as bars_bought does: what has been cut has been bought; and whole plans of other stocks, see
// stocks_bought_by. Of a bar that was there already, at home or on the rack, it brings what was
// there: nothing is bought with that. Errors: unknown_name where
// there is no such bar or cut; those of the edits.
engine::Result<std::vector<Edit>> cuts_ticked(const Project& project,
                                              const Catalogue& catalogue,
                                              const Resolved& resolved,
                                              const std::vector<BarPlan>& plans,
                                              const std::vector<SawTick>& ticks,
                                              CutState state);

}  // namespace model

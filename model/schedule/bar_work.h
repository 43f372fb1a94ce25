// What is done to bars: bought, cut, spoiled, laid back. Each gives the edits that say so.
#pragma once

#include "model/project/edit.h"
#include "model/schedule/bar_plan.h"

#include <string>
#include <vector>

namespace model {

// The purchase is done: every bar of the plans comes to the saw, with its cuts planned from it, so
// that the plan stays as it is printed whatever is cut, and offcuts that it takes leave the rack.
// Bars of which nothing is cut stay where they lie.
// Empty where no bar is in the plans but those at the saw, with nothing new to be cut from them.
std::vector<Edit> bars_bought(const Project& project,
                              const Catalogue& catalogue,
                              const Resolved& resolved,
                              const std::vector<BarPlan>& plans);

// All cuts that are only planned are planned anew: bars from which nothing has been cut go back to
// those that lie idle, offcuts to the rack. Empty where there is none.
std::vector<Edit> cuts_planned_anew(const Project& project);

// One cut at the saw. Errors: unknown_name where there is no such stock, bar or cut.
struct CutPlace {
    std::string stock;
    std::size_t bar = 0;  // in Stock::at_saw
    std::size_t cut = 0;  // in BarAtSaw::cuts

    bool operator==(const CutPlace&) const = default;
};

// What was spoiled and is not any more comes back from the rack; out_of_range where it is not there
// any more, with where it went.
engine::Result<Edit> cut_marked(const Project& project,
                                const Resolved& resolved,
                                const std::vector<CutPlace>& cuts,
                                CutState state);

// Whether there is a cut that cuts_planned_anew would plan again.
bool has_planned_cuts(const Project& project);

// Bars whose cuts are all made are done with: what is left of them, where it is as long as the
// shop keeps, goes to the rack as offcuts. Empty where there is none.
std::vector<Edit> offcuts_racked(const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved);

}  // namespace model

// What each length of bar is worth: what all bars would cost if it were not offered.
#pragma once

#include "model/resolve/resolved.h"
#include "model/schedule/bar_plan.h"

#include <functional>
#include <optional>
#include <vector>

namespace model {

struct WithoutLength {
    Index stock = 0;
    Nm length = 0;
    Nm halved_from = 0;
    int used = 0;               // bars of it in the plan
    Cents with = 0;             // what the bars of the whole project cost as it is
    std::optional<Cents> cost;  // without that length; none: not all pieces could be cut
    bool is_proven = false;     // both are the least there is
};

// For each length that each plan's supply offers, where all of them have a price: else there is no
// money to compare. The plans are those of `wish`; a plan in which pieces are left over is passed
// over, since it has no cost to compare with. All bars of the project are planned anew without a
// length in use; without another one all stays as it is.
std::vector<WithoutLength> what_if_without(const Project& project,
                                           const Catalogue& catalogue,
                                           const Resolved& resolved,
                                           const std::vector<BarPlan>& plans,
                                           const PlanWish& wish);

}  // namespace model

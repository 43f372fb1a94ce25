// Which drills the maker has.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"

#include <algorithm>
#include <cstdlib>
#include <string>

namespace model {

inline bool is_at_hand(const Shop& shop, const std::string& drill) {
    return shop.drills.empty() ||
           std::find(shop.drills.begin(), shop.drills.end(), drill) != shop.drills.end();
}

// Of the drills at hand that `serves` lets pass the one nearest to the named one; null when none
// does, or when no drills are listed.
template <class Serves>
const Drill* nearest_at_hand(const Catalogue& catalogue,
                             const Shop& shop,
                             const std::string& named,
                             const Serves& serves) {
    const Drill* wanted = find_drill(catalogue, named);
    if (wanted == nullptr) return nullptr;
    const auto away = [&](const Drill& drill) {
        return std::abs(drill.diameter.nm() - wanted->diameter.nm());
    };
    const Drill* best = nullptr;
    for (const auto& name : shop.drills) {
        const Drill* drill = find_drill(catalogue, name);
        if (drill == nullptr || !serves(*drill)) continue;
        if (best == nullptr || away(*drill) < away(*best)) best = drill;
    }
    return best;
}

}  // namespace model

#include "model/resolve/fastener_choice.h"

#include <algorithm>

namespace model {
namespace {

bool is_at_hand(const Shop& shop, const std::string& drill) {
    return shop.drills.empty() ||
           std::find(shop.drills.begin(), shop.drills.end(), drill) != shop.drills.end();
}

// The usual drill, or one at hand whose hole the rivet's maker allows (hole range of IFI-114 or ISO
// 15977, from the catalogue).
const Drill* drill_for(const Catalogue& catalogue, const Shop& shop, const BlindRivet& rivet) {
    if (is_at_hand(shop, rivet.drill)) return find_drill(catalogue, rivet.drill);
    for (const auto& name : shop.drills) {
        const Drill* drill = find_drill(catalogue, name);
        if (drill != nullptr && drill->diameter >= rivet.hole_least &&
            drill->diameter <= rivet.hole_most) {
            return drill;
        }
    }
    return nullptr;
}

}  // namespace

RivetChoice choose_rivet(const Catalogue& catalogue,
                         const Shop& shop,
                         std::string_view wanted_id,
                         MeasureSystem system,
                         Nm thickest,
                         Nm stack) {
    RivetChoice choice;
    choice.rivet = find_rivet(catalogue, wanted_id.empty() ? shop.fastener : wanted_id);
    if (choice.rivet == nullptr) {
        choice.rivet = rivet_for(catalogue, system, Length::from_nm(thickest));
    }
    if (choice.rivet == nullptr) return choice;
    choice.grip = grip_for(*choice.rivet, Length::from_nm(stack));
    choice.drill = drill_for(catalogue, shop, *choice.rivet);
    choice.drill_is_substitute =
        choice.drill != nullptr && choice.drill->name != choice.rivet->drill;
    return choice;
}

const BlindRivet* next_thinner(const Catalogue& catalogue, const BlindRivet& rivet) {
    const BlindRivet* best = nullptr;
    for (const auto& other : catalogue.rivets) {
        if (other.system != rivet.system || other.diameter >= rivet.diameter) continue;
        if (best == nullptr || other.diameter > best->diameter) best = &other;
    }
    return best;
}

Nm tail_radius(const BlindRivet& rivet) {
    return rivet.diameter.nm() * 3 / 4 + Length::nm_per_inch / 32;
}

Nm blind_reach(const BlindRivet& rivet, const RivetGrip& grip, Nm stack) {
    return grip.body_length.nm() + rivet.blind_side_extra.nm() - stack;
}

}  // namespace model

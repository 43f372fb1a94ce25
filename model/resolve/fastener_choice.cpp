#include "model/resolve/fastener_choice.h"

#include "model/resolve/drills_at_hand.h"

#include <algorithm>

namespace model {
namespace {

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

// Clear radius about the formed tail: 0.75 D + 1/32 in. Common practice; tried with the layout
// rules.
Nm tail_radius(const BlindRivet& rivet) {
    return rivet.diameter.nm() * 3 / 4 + Length::nm_per_inch / 32;
}

// How far the unset rivet reaches beyond the stack on the blind side, at most.
Nm blind_reach(const BlindRivet& rivet, const RivetGrip& grip, Nm stack) {
    return grip.body_length.nm() + rivet.blind_side_extra.nm() - stack;
}

FastenerChoice rivet_choice(const Catalogue& catalogue,
                            const BlindRivet& rivet,
                            const RivetGrip& grip,
                            const Drill& drill,
                            Nm stack) {
    const HoleMaking hole{.drill = static_cast<Index>(&drill - catalogue.drills.data()),
                          .diameter = drill.diameter.nm()};
    return {.spec = {.index = static_cast<Index>(&rivet - catalogue.rivets.data()),
                     .grip = static_cast<Index>(&grip - rivet.grips.data())},
            .diameter = rivet.diameter.nm(),
            .head_radius = rivet.head_diameter_most.nm() / 2,
            .tail_radius = tail_radius(rivet),
            .tail_reach = blind_reach(rivet, grip, stack),
            .slack = drill.diameter.nm() - rivet.diameter.nm(),
            .head_hole = hole,
            .far_hole = hole,
            .grip_least = grip.least.nm(),
            .grip_most = grip.most.nm()};
}

FastenerAnswer refused(std::string code, std::string what, std::string mend) {
    return {std::nullopt, {std::move(code), std::move(what), std::move(mend), {}}};
}

template <class Kind>
const Kind* thinner_of(const std::vector<Kind>& all, const Kind& than) {
    const Kind* best = nullptr;
    for (const auto& other : all) {
        if (other.system != than.system || other.diameter >= than.diameter) continue;
        if (best == nullptr || other.diameter > best->diameter) best = &other;
    }
    return best;
}

}  // namespace

FastenerAnswer fit_rivet(const Catalogue& catalogue,
                         const Shop& shop,
                         const BlindRivet& rivet,
                         Nm stack) {
    const RivetGrip* grip = grip_for(rivet, Length::from_nm(stack));
    if (grip == nullptr) {
        return refused("no_grip", rivet.id + " is sold in no length that grips this stack",
                       "choose a thicker rivet, or thinner bar");
    }
    const Drill* drill = drill_for(catalogue, shop, rivet);
    if (drill == nullptr) {
        return refused("no_drill", "no drill at hand makes the hole for " + rivet.id,
                       "get drill " + rivet.drill + ", or choose another rivet");
    }
    return {rivet_choice(catalogue, rivet, *grip, *drill, stack), {}};
}

FastenerAnswer choose_rivet(const Catalogue& catalogue,
                            const Shop& shop,
                            std::string_view wanted_id,
                            MeasureSystem system,
                            Nm thickest,
                            Nm stack) {
    const auto* rivet = find_rivet(catalogue, wanted_id.empty() ? shop.fastener : wanted_id);
    if (rivet == nullptr) rivet = rivet_for(catalogue, system, Length::from_nm(thickest));
    if (rivet == nullptr) {
        return refused("no_fastener", "the catalogue has no blind rivet for these plates",
                       "add one to the catalogue");
    }
    return fit_rivet(catalogue, shop, *rivet, stack);
}

const BlindRivet* next_thinner(const std::vector<BlindRivet>& rivets, const BlindRivet& than) {
    return thinner_of(rivets, than);
}

const MachineScrew* next_thinner(const std::vector<MachineScrew>& screws,
                                 const MachineScrew& than) {
    return thinner_of(screws, than);
}

const std::string& fastener_id(const Catalogue& catalogue, const FastenerSpec& spec) {
    if (spec.kind == FastenerSpec::Kind::blind_rivet) return catalogue.rivets[spec.index].id;
    return catalogue.screws[spec.index].id;
}

}  // namespace model

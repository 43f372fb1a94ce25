#include "model/catalogue/catalogue.h"
#include "model/catalogue/threads.h"

#include <algorithm>
#include <cstdlib>
#include <tuple>

namespace model {
namespace {

// Twice the distance of the stack from the middle of the range: whole nanometres.
std::int64_t off_middle(const RivetGrip& grip, engine::Length stack) {
    return std::abs(2 * stack.nm() - grip.least.nm() - grip.most.nm());
}

}  // namespace

const RivetGrip* grip_for(const BlindRivet& rivet, engine::Length stack) {
    const RivetGrip* best = nullptr;
    for (const auto& grip : rivet.grips) {
        if (stack < grip.least || stack > grip.most) continue;
        // Where one range ends and the next begins, the limit belongs to the lower: the published
        // ranges begin 0.001 in above it (US Army TM 10-5410-221-14/1, Table 4-3).
        const bool at_shared_limit = best != nullptr && stack == best->most && stack == grip.least;
        if (at_shared_limit) continue;
        if (best == nullptr || off_middle(grip, stack) < off_middle(*best, stack)) best = &grip;
    }
    return best;
}

const BlindRivet* rivet_for(const Catalogue& catalogue,
                            MeasureSystem system,
                            engine::Length thickest) {
    const BlindRivet* largest = nullptr;
    for (const auto& rivet : catalogue.rivets) {
        if (rivet.system != system) continue;
        if (rivet.diameter >= thickest) return &rivet;
        largest = &rivet;
    }
    return largest;
}

const MachineScrew* screw_for(const Catalogue& catalogue,
                              MeasureSystem system,
                              engine::Length plate) {
    const MachineScrew* best = nullptr;
    const MachineScrew* smallest = nullptr;
    for (const auto& screw : catalogue.screws) {
        if (screw.system != system) continue;
        if (smallest == nullptr ||
            std::tie(screw.diameter, screw.pitch) < std::tie(smallest->diameter, smallest->pitch)) {
            smallest = &screw;
        }
        const auto* drill = find_drill(catalogue, screw.tap_drill);
        if (drill == nullptr || drill->diameter > plate) continue;
        if (!has_enough_threads(plate, screw.pitch)) continue;
        if (best == nullptr ||
            std::tie(screw.diameter, screw.pitch) > std::tie(best->diameter, best->pitch)) {
            best = &screw;
        }
    }
    return best != nullptr ? best : smallest;
}

const MachineScrew* finer_thread(const Catalogue& catalogue, const MachineScrew& screw) {
    for (const auto& other : catalogue.screws) {
        if (other.system == screw.system && other.diameter == screw.diameter &&
            other.pitch < screw.pitch) {
            return &other;
        }
    }
    return nullptr;
}

const RivetNut* rivet_nut_for(const Catalogue& catalogue,
                              const MachineScrew& screw,
                              engine::Length wall) {
    for (const auto& nut : catalogue.rivet_nuts) {
        if (nut.screw == screw.id && nut.grip_least <= wall && wall <= nut.grip_most) return &nut;
    }
    return nullptr;
}

}  // namespace model

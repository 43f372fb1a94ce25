#include "model/schedule/sheet_pins.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <limits>

namespace model {
namespace {

engine::Length drilled_size(const Catalogue& catalogue, const BlindRivet& rivet) {
    const auto* drill = find_drill(catalogue, rivet.drill);
    return drill != nullptr ? drill->diameter : rivet.hole_least;
}

bool serves_better(const SheetPin& pin, const SheetPin& than, engine::Length stack) {
    const bool holds = pin.grip_most >= stack;
    if (holds != (than.grip_most >= stack)) return holds;
    return holds ? pin.grip_most < than.grip_most : pin.grip_most > than.grip_most;
}

}  // namespace

int pins_in_joint(int holes) {
    constexpr int least_in_joint = 2;
    constexpr int holes_to_a_pin = 3;
    return std::min(holes, std::max(least_in_joint, (holes + holes_to_a_pin - 1) / holes_to_a_pin));
}

const SheetPin* pin_for(const Catalogue& catalogue, const BlindRivet& rivet, engine::Length stack) {
    const auto hole = drilled_size(catalogue, rivet);
    const auto away = [&](const SheetPin& pin) { return std::abs((pin.hole - hole).nm()); };
    const SheetPin* best = nullptr;
    std::int64_t least_away = engine::Length::nm_per_mm / 4;
    for (const auto& pin : catalogue.pins) {
        if (away(pin) > least_away) continue;
        const bool is_nearer = best == nullptr || away(pin) < away(*best);
        if (is_nearer || serves_better(pin, *best, stack)) best = &pin;
        least_away = away(*best);
    }
    return best;
}

std::string pin_name(const SheetPin& pin, engine::Length stack) {
    return pin.id + (stack > pin.grip_most ? ", long" : "");
}

}  // namespace model

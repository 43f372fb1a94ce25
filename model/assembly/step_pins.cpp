#include "model/assembly/step_pins.h"

#include "model/assembly/far_apart.h"
#include "model/schedule/sheet_pins.h"

namespace model {

StepPins pins_of(const Catalogue& catalogue, const Resolved& resolved, Index number) {
    const Joint& joint = resolved.joints[number];
    const auto fasteners = resolved.fasteners_of(joint);
    StepPins pins{.joint = number};
    if (fasteners.empty() || fasteners[0].spec.index >= catalogue.rivets.size()) return pins;
    const auto* pin = pin_for(catalogue, catalogue.rivets[fasteners[0].spec.index],
                              engine::Length::from_nm(fasteners[0].grip));
    if (pin != nullptr) pins.pin = static_cast<Index>(pin - catalogue.pins.data());
    std::vector<Point> places;
    for (const auto& fastener : fasteners) places.push_back(fastener.at);
    auto turns = turns_far_apart(places);
    turns.resize(static_cast<std::size_t>(pins_in_joint(static_cast<int>(fasteners.size()))));
    for (const std::size_t k : turns) {
        pins.fasteners.push_back(joint.first_fastener + static_cast<Index>(k));
    }
    return pins;
}

}  // namespace model

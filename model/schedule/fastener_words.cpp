#include "model/schedule/fastener_words.h"

#include "engine/measure/tape.h"

#include <algorithm>
#include <tuple>

namespace model {
namespace {

bool is_before(const FastenerSpec& a, const FastenerSpec& b) {
    return std::tie(a.kind, a.index, a.grip, a.nut) < std::tie(b.kind, b.index, b.grip, b.nut);
}

FastenerWords rivet_words(const BlindRivet& rivet, const RivetGrip& grip) {
    return {.label = rivet.id + ", grip " + grip.code,
            .diameter = size_text(rivet.diameter, rivet.system),
            .grip_or_length =
                size_text(grip.least, rivet.system) + " to " + size_text(grip.most, rivet.system)};
}

FastenerWords screw_words(const MachineScrew& screw, engine::Length length) {
    const auto length_text = size_text(length, screw.system);
    return {.label = screw.id + " x " + length_text,
            .diameter = size_text(screw.diameter, screw.system),
            .grip_or_length = length_text};
}

}  // namespace

std::string size_text(engine::Length size, MeasureSystem system) {
    using engine::TapeForm;
    if (system == MeasureSystem::metric) {
        return engine::tape_text(size, {TapeForm::millimetre, 32, 2, true});
    }
    const engine::TapeStyle fraction{TapeForm::inch_fraction, 64, 3, true};
    const engine::TapeStyle decimal{TapeForm::inch_decimal, 64, 4, true};
    const bool is_fraction = size.nm() % engine::tape_step(fraction).nm() == 0;
    return engine::tape_text(size, is_fraction ? fraction : decimal);
}

FastenerWords fastener_words(const Catalogue& catalogue, const FastenerSpec& spec) {
    if (spec.kind == FastenerSpec::Kind::blind_rivet) {
        const auto& rivet = catalogue.rivets[spec.index];
        return rivet_words(rivet, rivet.grips[spec.grip]);
    }
    const auto& screw = catalogue.screws[spec.index];
    return screw_words(screw, screw.lengths[spec.grip]);
}

FastenersInUse::FastenersInUse(const Catalogue& catalogue, const Resolved& resolved) {
    for (const auto& fastener : resolved.fasteners) {
        const auto place = std::ranges::lower_bound(specs_, fastener.spec, is_before);
        if (place == specs_.end() || *place != fastener.spec) specs_.insert(place, fastener.spec);
    }
    for (const auto& spec : specs_) words_.push_back(fastener_words(catalogue, spec));
    spec_of_.reserve(resolved.fasteners.size());
    for (const auto& fastener : resolved.fasteners) {
        const auto place = std::ranges::lower_bound(specs_, fastener.spec, is_before);
        spec_of_.push_back(static_cast<std::uint32_t>(place - specs_.begin()));
    }
}

}  // namespace model

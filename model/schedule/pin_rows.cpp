#include "model/schedule/pin_rows.h"

#include "model/assembly/pinned_steps.h"
#include "model/schedule/fastener_words.h"
#include "model/schedule/sheet_pins.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace model {
namespace {

// So many pins of the size hold a joint.
struct PinnedJoint {
    Index joint = 0;
    int pins = 0;
};

struct PinTally {
    const SheetPin* pin = nullptr;
    bool is_too_short = false;          // no pin in the catalogue holds the stack
    const BlindRivet* rivet = nullptr;  // the first whose holes it holds
    engine::Length thickest_stack;
    std::vector<PinnedJoint> joints;
};

class PinCount {
public:
    PinCount(const Catalogue& catalogue, const Resolved& resolved)
        : catalogue_{catalogue}, resolved_{resolved} {}

    void add(Index number) {
        const auto fasteners = resolved_.fasteners_of(resolved_.joints[number]);
        if (fasteners.empty() || fasteners[0].spec.kind != FastenerSpec::Kind::blind_rivet) return;
        const auto stack = engine::Length::from_nm(fasteners[0].grip);
        const auto* pin = pin_of(fasteners[0].spec.index, stack);
        if (pin == nullptr) return;
        auto& tally = tally_of(*pin, stack > pin->grip_most, fasteners[0].spec.index);
        tally.thickest_stack = std::max(tally.thickest_stack, stack);
        tally.joints.push_back({number, pins_in_joint(static_cast<int>(fasteners.size()))});
    }

    // In order of catalogue, those that hold their stacks first.
    std::vector<PinTally> tallies() && {
        std::ranges::sort(tallies_, {}, [](const PinTally& tally) {
            return std::pair{tally.pin, tally.is_too_short};
        });
        return std::move(tallies_);
    }

private:
    struct Choice {
        Index rivet = 0;
        engine::Length stack;
        const SheetPin* pin = nullptr;
    };

    // A project has few rivets and few stacks, but many joints.
    const SheetPin* pin_of(Index rivet, engine::Length stack) {
        for (const auto& choice : choices_) {
            if (choice.rivet == rivet && choice.stack == stack) return choice.pin;
        }
        const auto* pin = pin_for(catalogue_, catalogue_.rivets[rivet], stack);
        choices_.push_back({.rivet = rivet, .stack = stack, .pin = pin});
        return pin;
    }

    PinTally& tally_of(const SheetPin& pin, bool is_too_short, Index rivet) {
        for (auto& tally : tallies_) {
            if (tally.pin == &pin && tally.is_too_short == is_too_short) return tally;
        }
        tallies_.push_back({.pin = &pin,
                            .is_too_short = is_too_short,
                            .rivet = &catalogue_.rivets[rivet],
                            .joints = {}});
        return tallies_.back();
    }

    const Catalogue& catalogue_;
    const Resolved& resolved_;
    std::vector<Choice> choices_;
    std::vector<PinTally> tallies_;
};

int most_in_frame(const std::vector<PinnedJoint>& joints, const Resolved& resolved) {
    std::vector<int> by_frame(resolved.frames.size());
    for (const auto& it : joints) by_frame[resolved.joints[it.joint].frame] += it.pins;
    return *std::ranges::max_element(by_frame);
}

// Joints that are in no step are pinned beside all that is.
int most_in_step(const std::vector<PinnedJoint>& joints, const std::vector<PinnedSteps>& steps) {
    std::vector<int> more(2);  // from each step on
    int always = 0;
    for (const auto& it : joints) {
        const auto& [first, last] = steps[it.joint];
        if (first > last) {
            always += it.pins;
            continue;
        }
        if (more.size() < last + 2U) more.resize(last + 2U);
        more[first] += it.pins;
        more[last + 1U] -= it.pins;
    }
    std::partial_sum(more.begin(), more.end(), more.begin());
    return always + *std::ranges::max_element(more);
}

FastenerRow row_of(const PinTally& tally, int needed) {
    const auto system = tally.rivet->system;
    return {.fastener = pin_name(*tally.pin, tally.thickest_stack),
            .diameter = size_text(tally.rivet->diameter, system),
            .grip_or_length = tally.is_too_short
                                  ? "at least " + size_text(tally.thickest_stack, system)
                                  : "to " + size_text(tally.pin->grip_most, system),
            .needed = needed,
            .joints = static_cast<int>(tally.joints.size())};
}

}  // namespace

std::vector<FastenerRow> pin_rows(const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  const AssemblyOrder* order) {
    PinCount count{catalogue, resolved};
    for (Index i = 0; i < resolved.joints.size(); ++i) count.add(i);
    const auto steps =
        order == nullptr ? std::vector<PinnedSteps>{} : pinned_steps(*order, resolved);
    std::vector<FastenerRow> rows;
    for (const auto& tally : std::move(count).tallies()) {
        const int needed = order == nullptr ? most_in_frame(tally.joints, resolved)
                                            : most_in_step(tally.joints, steps);
        rows.push_back(row_of(tally, needed));
    }
    return rows;
}

}  // namespace model

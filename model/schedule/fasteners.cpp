#include "engine/files/csv.h"
#include "model/schedule/csv_tables.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/fastener_words.h"
#include "model/schedule/sheet_pins.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace model {
namespace {

// What is bought beyond what is needed, rounded up to whole ones.
int spares_for(int needed, double spare_percent) {
    if (!(spare_percent > 0.0)) return 0;
    const double spares = std::ceil(needed * std::min(spare_percent, 1000.0) / 100.0 - 1e-9);
    return static_cast<int>(spares);
}

// Counts fasteners of one kind as they come, joint by joint.
struct Tally {
    int needed = 0;
    int joints = 0;
    Index last_joint = no_index;
    engine::Length thinnest_stack;
    engine::Length thickest_stack;

    void add(const Fastener& fastener) {
        const auto stack = engine::Length::from_nm(fastener.grip);
        thinnest_stack = needed == 0 ? stack : std::min(thinnest_stack, stack);
        thickest_stack = std::max(thickest_stack, stack);
        if (fastener.joint != last_joint) ++joints;
        last_joint = fastener.joint;
        ++needed;
    }

    engine::Length only_stack() const {
        return thinnest_stack == thickest_stack ? thinnest_stack : engine::Length{};
    }
};

FastenerRow row_of(const FastenerWords& words, const Tally& tally, double spare_percent) {
    return {.fastener = words.label,
            .diameter = words.diameter,
            .grip_or_length = words.grip_or_length,
            .stack = tally.only_stack(),
            .needed = tally.needed,
            .spares = spares_for(tally.needed, spare_percent),
            .joints = tally.joints};
}

FastenerWords rivet_nut_words(const Catalogue& catalogue, const RivetNut& nut) {
    const auto* screw = find_screw(catalogue, nut.screw);
    if (screw == nullptr) return {.label = nut.id, .diameter = "", .grip_or_length = ""};
    return {.label = nut.id,
            .diameter = size_text(screw->diameter, screw->system),
            .grip_or_length = size_text(nut.grip_least, screw->system) + " to " +
                              size_text(nut.grip_most, screw->system)};
}

// A screw is one thing to buy, whatever holds it.
std::vector<std::size_t> first_spec_of_label(const FastenersInUse& in_use) {
    std::vector<std::size_t> first;
    for (std::size_t i = 0; i < in_use.specs().size(); ++i) {
        std::size_t same = 0;
        while (in_use.words(same).label != in_use.words(i).label) ++same;
        first.push_back(same);
    }
    return first;
}

void append_set_fasteners(std::vector<FastenerRow>& rows,
                          const Project& project,
                          const Catalogue& catalogue,
                          const Resolved& resolved) {
    const FastenersInUse in_use{catalogue, resolved};
    const auto row_specs = first_spec_of_label(in_use);
    std::vector<Tally> tallies(row_specs.size());
    std::vector<Tally> nuts(catalogue.screws.size());
    std::vector<Tally> rivet_nuts(catalogue.rivet_nuts.size());
    for (Index i = 0; i < resolved.fasteners.size(); ++i) {
        const auto spec = in_use.spec_of(i);
        tallies[row_specs[spec]].add(resolved.fasteners[i]);
        const auto& [kind, index, grip, nut] = in_use.specs()[spec];
        if (kind == FastenerSpec::Kind::screw_through) nuts[index].add(resolved.fasteners[i]);
        if (nut < rivet_nuts.size()) rivet_nuts[nut].add(resolved.fasteners[i]);
    }
    const double spare_percent = project.shop.spare_percent;
    for (std::size_t i = 0; i < tallies.size(); ++i) {
        if (tallies[i].needed == 0) continue;
        rows.push_back(row_of(in_use.words(i), tallies[i], spare_percent));
    }
    for (std::size_t i = 0; i < nuts.size(); ++i) {
        if (nuts[i].needed == 0) continue;
        const auto& screw = catalogue.screws[i];
        const FastenerWords words{.label = "nut for " + screw.id,
                                  .diameter = size_text(screw.diameter, screw.system),
                                  .grip_or_length = ""};
        rows.push_back(row_of(words, nuts[i], spare_percent));
    }
    for (std::size_t i = 0; i < rivet_nuts.size(); ++i) {
        if (rivet_nuts[i].needed == 0) continue;
        rows.push_back(row_of(rivet_nut_words(catalogue, catalogue.rivet_nuts[i]), rivet_nuts[i],
                              spare_percent));
    }
}

// ---- pins ---------------------------------------------------------------------------------------

struct PinTally {
    const SheetPin* pin = nullptr;
    bool is_too_short = false;          // no pin in the catalogue holds the stack
    const BlindRivet* rivet = nullptr;  // the first whose holes it holds
    engine::Length thickest_stack;
    std::vector<int> by_frame;
    int joints = 0;
};

class PinCount {
public:
    PinCount(const Catalogue& catalogue, const Resolved& resolved)
        : catalogue_{catalogue}, resolved_{resolved} {}

    void add(const Joint& joint) {
        const auto fasteners = resolved_.fasteners_of(joint);
        if (fasteners.empty() || fasteners[0].spec.kind != FastenerSpec::Kind::blind_rivet) return;
        const auto stack = engine::Length::from_nm(fasteners[0].grip);
        const auto* pin = pin_of(fasteners[0].spec.index, stack);
        if (pin == nullptr) return;
        auto& tally = tally_of(*pin, stack > pin->grip_most, fasteners[0].spec.index);
        tally.thickest_stack = std::max(tally.thickest_stack, stack);
        tally.by_frame[joint.frame] += pins_in_joint(static_cast<int>(fasteners.size()));
        ++tally.joints;
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
                            .by_frame = std::vector<int>(resolved_.frames.size())});
        return tallies_.back();
    }

    const Catalogue& catalogue_;
    const Resolved& resolved_;
    std::vector<Choice> choices_;
    std::vector<PinTally> tallies_;
};

// Pins are taken out again before the rivets go in, so enough for the frame that needs most serve
// all of them, and none is spent.
FastenerRow row_of(const PinTally& tally) {
    const auto system = tally.rivet->system;
    return {.fastener = tally.pin->id + (tally.is_too_short ? ", long" : ""),
            .diameter = size_text(tally.rivet->diameter, system),
            .grip_or_length = tally.is_too_short
                                  ? "at least " + size_text(tally.thickest_stack, system)
                                  : "to " + size_text(tally.pin->grip_most, system),
            .needed = *std::max_element(tally.by_frame.begin(), tally.by_frame.end()),
            .joints = tally.joints};
}

void append_pins(std::vector<FastenerRow>& rows,
                 const Catalogue& catalogue,
                 const Resolved& resolved) {
    PinCount count{catalogue, resolved};
    for (const auto& joint : resolved.joints) count.add(joint);
    for (const auto& tally : std::move(count).tallies()) rows.push_back(row_of(tally));
}

}  // namespace

std::vector<FastenerRow> fastener_rows(const Project& project,
                                       const Catalogue& catalogue,
                                       const Resolved& resolved) {
    std::vector<FastenerRow> rows;
    append_set_fasteners(rows, project, catalogue, resolved);
    append_pins(rows, catalogue, resolved);
    return rows;
}

std::string fastener_csv(const std::vector<FastenerRow>& rows) {
    engine::CsvText text{"fastener", "diameter", "grip_or_length", "stack_mm",
                         "needed",   "spares",   "total",          "joints"};
    for (const auto& row : rows) {
        const bool has_one_stack = row.stack != engine::Length{};
        text.row({row.fastener, row.diameter, row.grip_or_length,
                  has_one_stack ? decimal_mm(row.stack) : "", std::to_string(row.needed),
                  std::to_string(row.spares), std::to_string(row.needed + row.spares),
                  std::to_string(row.joints)});
    }
    return std::move(text).take();
}

}  // namespace model

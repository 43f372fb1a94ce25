#include "model/resolve/screw_choice.h"

#include "model/catalogue/threads.h"
#include "model/resolve/drills_at_hand.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace model {
namespace {

constexpr Nm thirty_second = Length::nm_per_inch / 32;

Index number_of(const Catalogue& catalogue, const Drill& drill) {
    return static_cast<Index>(&drill - catalogue.drills.data());
}

HoleMaking hole_by(const Catalogue& catalogue, const Drill& drill, HoleOperation operation) {
    return {.drill = number_of(catalogue, drill),
            .diameter = drill.diameter.nm(),
            .operation = operation};
}

FastenerAnswer refused(std::string code,
                       std::string what,
                       std::string mend,
                       std::vector<FindingNumber> numbers = {}) {
    return {std::nullopt, {std::move(code), std::move(what), std::move(mend), std::move(numbers)}};
}

// Close fit, or what is at hand between that and the loose fit of slotted joints.
const Drill* clearance_drill(const Catalogue& catalogue,
                             const Shop& shop,
                             const MachineScrew& screw) {
    if (is_at_hand(shop, screw.clearance_drill)) {
        return find_drill(catalogue, screw.clearance_drill);
    }
    const auto* loose = find_drill(catalogue, screw.loose_drill);
    return nearest_at_hand(catalogue, shop, screw.clearance_drill, [&](const Drill& drill) {
        return drill.diameter > screw.diameter && loose != nullptr &&
               drill.diameter <= loose->diameter;
    });
}

// The usual one, or one at hand whose hole lies within the limits of the thread.
const Drill* tap_drill(const Catalogue& catalogue, const Shop& shop, const MachineScrew& screw) {
    if (is_at_hand(shop, screw.tap_drill)) return find_drill(catalogue, screw.tap_drill);
    return nearest_at_hand(catalogue, shop, screw.tap_drill, [&](const Drill& drill) {
        return judge_tap_hole(screw, drill.diameter) == TapHole::right;
    });
}

std::string per_cent_text(double percent) {
    return std::to_string(std::lround(percent)) + " per cent";
}

double percent_of(const MachineScrew& screw, const Drill& drill) {
    return percent_of_thread(screw.diameter, screw.pitch, drill.diameter);
}

// No drill at hand is right; one that is nearly right is warned of, since it would be tried.
FastenerAnswer no_tap_drill(const Catalogue& catalogue,
                            const Shop& shop,
                            const MachineScrew& screw) {
    const auto* right = find_drill(catalogue, screw.tap_drill);
    const std::string right_one =
        "drill " + screw.tap_drill +
        (right == nullptr ? "" : " (" + per_cent_text(percent_of(screw, *right)) + ")");
    const auto* nearest = nearest_at_hand(catalogue, shop, screw.tap_drill, [&](const Drill& d) {
        return d.diameter < screw.diameter && percent_of(screw, d) < 150.0;
    });
    if (nearest == nullptr) {
        return refused("no_drill", "no drill at hand makes the hole to tap for " + screw.id,
                       "get " + right_one + ", or choose another screw");
    }
    const double percent = percent_of(screw, *nearest);
    const bool is_small = judge_tap_hole(screw, nearest->diameter) == TapHole::too_small;
    const std::string what = "of the drills at hand " + nearest->name + " is nearest for tapping " +
                             screw.id + "; it leaves " + per_cent_text(percent) +
                             " of the thread, so the " +
                             (is_small ? "tap would bind or break" : "thread would strip");
    return refused(is_small ? "tap_binds" : "thread_strips", what,
                   "get " + right_one + ", or hold the screw with a nut or a rivet nut",
                   {{"percent", percent}, {"hole", nearest->diameter}});
}

// The shortest that reaches so far; null when none is sold so long.
const Length* length_reaching(const MachineScrew& screw, Nm reach) {
    for (const auto& length : screw.lengths) {
        if (length.nm() >= reach) return &length;
    }
    return nullptr;
}

// What the three ways to hold a screw have in common, filled in by each.
struct Making {
    const Catalogue& catalogue;
    const Shop& shop;
    const MachineScrew& screw;
    const StackSizes& sizes;
    const Drill& clearance;
};

// `beyond` is how much of the screw must stand out of the stack.
FastenerAnswer with_length(const Making& m, Nm beyond, FastenerChoice choice) {
    const auto* length = length_reaching(m.screw, m.sizes.total + beyond);
    if (length == nullptr) {
        const auto longest = m.screw.lengths.empty() ? Length{} : m.screw.lengths.back();
        return refused("no_length",
                       m.screw.id +
                           " is sold in no length that reaches through this "
                           "stack",
                       "choose a thicker screw, or thinner bar",
                       {{"wanted", Length::from_nm(m.sizes.total + beyond)}, {"longest", longest}});
    }
    const Nm half = m.screw.diameter.nm() / 2;
    choice.spec.index = static_cast<Index>(&m.screw - m.catalogue.screws.data());
    choice.spec.grip = static_cast<Index>(length - m.screw.lengths.data());
    choice.head_radius = m.screw.head_diameter_most.nm() / 2;
    // A driver's blade and the hand's first grip come straight on: a little more than the head,
    // common practice.
    choice.driver_radius = choice.head_radius + thirty_second;
    choice.head_hole = hole_by(m.catalogue, m.clearance, HoleOperation::clearance);
    choice.slack = m.clearance.diameter.nm() - m.screw.diameter.nm();
    choice.diameter = std::max(choice.diameter, m.screw.diameter.nm());
    choice.tail_radius = std::max(choice.tail_radius, half + thirty_second);
    choice.tail_reach = std::max(choice.tail_reach, length->nm() - m.sizes.total);
    choice.grip_most = length->nm() - beyond;
    return {choice, {}};
}

// The point of a screw is no full thread: it has to stand out by about one pitch (common practice),
// so that all of the plate's threads hold.
FastenerAnswer tapped(const Making& m) {
    const auto* drill = tap_drill(m.catalogue, m.shop, m.screw);
    if (drill == nullptr) return no_tap_drill(m.catalogue, m.shop, m.screw);
    FastenerChoice choice{.spec = {.kind = FastenerSpec::Kind::screw_tapped}};
    choice.far_hole = hole_by(m.catalogue, *drill, HoleOperation::tap_drill);
    choice.far_hole.tap = static_cast<Index>(&m.screw - m.catalogue.screws.data());
    return with_length(m, m.screw.pitch.nm(), choice);
}

// A socket for the nut is about 1.45 times as wide as the nut across its flats (from memory), and
// at least one thread stands out of the nut (common practice).
FastenerAnswer with_nut(const Making& m) {
    const Nm height = m.screw.nut_height_most.nm();
    FastenerChoice choice{.spec = {.kind = FastenerSpec::Kind::screw_through}};
    choice.tail_radius = m.screw.nut_width_most.nm() * 29 / 40;
    choice.tail_reach = height;
    choice.far_hole = hole_by(m.catalogue, m.clearance, HoleOperation::clearance);
    return with_length(m, height + m.screw.pitch.nm(), choice);
}

// Its thread lies at the far end of its body, so the screw reaches as far as the unset body does.
// The hole in the far plate is as large as the insert, and edge distance and pitch go by it.
FastenerAnswer with_rivet_nut(const Making& m) {
    const auto* nut = rivet_nut_for(m.catalogue, m.screw, Length::from_nm(m.sizes.far));
    if (nut == nullptr) {
        return refused("no_rivet_nut",
                       "no rivet nut for " + m.screw.id + " grips a plate of this thickness",
                       "choose another thread, or tap the plate, or use a nut",
                       {{"thickness", Length::from_nm(m.sizes.far)}});
    }
    const auto* drill = find_drill(m.catalogue, nut->drill);
    if (drill == nullptr || !is_at_hand(m.shop, nut->drill)) {
        return refused("no_drill",
                       "no drill at hand makes the hole for a rivet nut of " + m.screw.id,
                       "get drill " + nut->drill + ", or choose a nut");
    }
    FastenerChoice choice{.spec = {.kind = FastenerSpec::Kind::screw_in_rivet_nut}};
    choice.spec.nut = static_cast<Index>(nut - m.catalogue.rivet_nuts.data());
    choice.diameter = drill->diameter.nm();
    choice.far_hole = hole_by(m.catalogue, *drill, HoleOperation::drill);
    choice.tail_radius = nut->rim_diameter.nm() / 2 + thirty_second;
    Nm longest = 0;  // of any wall, so that the room does not hang on which plate is the far one
    for (const auto& other : m.catalogue.rivet_nuts) {
        if (other.screw == nut->screw) longest = std::max(longest, other.body_length.nm());
    }
    choice.tail_reach = longest - m.sizes.thinnest;
    return with_length(m, nut->body_length.nm() - m.sizes.far, choice);
}

}  // namespace

FastenerWish wish_of(const Catalogue& catalogue, const Shop& shop, const JointOverride* own) {
    FastenerWish wish{.hold = shop.screw_hold};
    if (own != nullptr && own->screw_hold) wish.hold = *own->screw_hold;
    const std::string own_id = own != nullptr && own->fastener ? *own->fastener : std::string{};
    const auto is_screw = [&](const std::string& id) {
        return find_screw(catalogue, id) != nullptr;
    };
    if (is_screw(own_id)) {
        wish.id = own_id;
    } else if (own != nullptr && own->removable) {
        wish.id = is_screw(shop.screw)      ? shop.screw
                  : is_screw(shop.fastener) ? shop.fastener
                                            : std::string{};
    } else if (own_id.empty() && is_screw(shop.fastener)) {
        wish.id = shop.fastener;
    } else {
        return {.id = own_id};
    }
    wish.is_screw = true;
    return wish;
}

FastenerAnswer choose_screw(const Catalogue& catalogue,
                            const Shop& shop,
                            const FastenerWish& wish,
                            MeasureSystem system,
                            const StackSizes& sizes) {
    const auto* screw = find_screw(catalogue, wish.id);
    if (screw == nullptr) screw = screw_for(catalogue, system, Length::from_nm(sizes.thinnest));
    if (screw == nullptr) {
        return refused("no_fastener", "the catalogue has no machine screw for these plates",
                       "add one to the catalogue");
    }
    const auto* clearance = clearance_drill(catalogue, shop, *screw);
    if (clearance == nullptr) {
        return refused("no_drill", "no drill at hand lets " + screw->id + " through",
                       "get drill " + screw->clearance_drill + ", or choose another screw");
    }
    const Making making{catalogue, shop, *screw, sizes, *clearance};
    switch (wish.hold) {
        case ScrewHold::tapped:
            return tapped(making);
        case ScrewHold::nut:
            return with_nut(making);
        case ScrewHold::rivet_nut:
            return with_rivet_nut(making);
    }
    return tapped(making);
}

}  // namespace model

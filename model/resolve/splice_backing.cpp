#include "model/resolve/splice_backing.h"

#include <algorithm>

namespace model {
namespace {

Nm thickness_of(const SectionPlate& wall) {
    const auto normal = static_cast<std::size_t>(wall.normal_axis);
    return wall.hi[normal] - wall.lo[normal];
}

bool is_of(const BackingRoom& room, const StockShape& shape, SectionForm form) {
    return shape.section != no_index && room.catalogue.sections[shape.section].form == form;
}

// The stretch of a wall across the run that a backing may lie on.
using Stretch = std::array<Nm, 2>;

// The thinnest flat that is as thick as the wall, of those the widest that has room; of equal ones
// the member's own stock.
const StockShape* flat_for(const BackingRoom& room, const StockShape& member, Nm wall, Nm width) {
    const StockShape* best = nullptr;
    const auto consider = [&](const StockShape& shape) {
        if (!is_of(room, shape, SectionForm::flat)) return;
        const Section& flat = room.catalogue.sections[shape.section];
        if (flat.a.nm() > width || flat.a.nm() < room.least_width) return;
        if (flat.thickness.nm() < wall) return;
        if (best != nullptr) {
            const Section& other = room.catalogue.sections[best->section];
            if (flat.thickness > other.thickness) return;
            if (flat.thickness == other.thickness && flat.a <= other.a) return;
        }
        best = &shape;
    };
    consider(member);
    for (const auto& shape : room.shapes) consider(shape);
    return best;
}

class Sides {
public:
    Sides(const StockShape& member, const BackingRoom& room)
        : member_{member}, room_{room}, section_{room.catalogue.sections[member.section]} {}

    // A flat on that wall, in the middle of the stretch; false where none suits.
    bool add(Backings& all, std::size_t wall, Stretch stretch, bool is_outside = false) const {
        const SectionPlate& plate = member_.walls[wall];
        const auto* flat = flat_for(room_, member_, thickness_of(plate), stretch[1] - stretch[0]);
        if (flat == nullptr) return false;
        const Section& of = room_.catalogue.sections[flat->section];
        const auto normal = static_cast<std::size_t>(plate.normal_axis);
        const std::size_t along = 1 - normal;
        const int away = is_outside ? plate.outward : -plate.outward;
        const Nm face = away > 0 ? plate.hi[normal] : plate.lo[normal];
        const Nm from = stretch[0] + (stretch[1] - stretch[0] - of.a.nm()) / 2;
        Backing backing{.shape = flat, .a_along = along, .is_outside = is_outside};
        backing.datum[along] = from;
        backing.datum[normal] = face;
        backing.sense[normal] = away;
        backing.away[normal] = away;
        backing.lo[along] = from;
        backing.hi[along] = from + of.a.nm();
        backing.lo[normal] = away > 0 ? face : face - of.thickness.nm();
        backing.hi[normal] = away > 0 ? face + of.thickness.nm() : face;
        all.push_back(backing);
        return true;
    }

    // How far from the outer face of a wall that runs beside it a backing begins: clear of the root
    // fillet, and of a backing on that wall where there is one.
    Nm beside(Nm wall, bool is_backed) const {
        const Nm backing = is_backed ? backing_thickness() : 0;
        return wall + std::max(section_.root_radius.nm(), backing + room_.gap);
    }

    // Of the flats that would lie beside one another: as flat_for takes them, whatever their width.
    Nm backing_thickness() const {
        Nm thickest = 0;
        Nm thinnest = 0;
        for (const auto& wall : member_.walls) {
            if (!wall.is_root_fillet) thickest = std::max(thickest, thickness_of(wall));
        }
        for (const auto& shape : room_.shapes) {
            if (!is_of(room_, shape, SectionForm::flat)) continue;
            const Nm thickness = room_.catalogue.sections[shape.section].thickness.nm();
            if (thickness < thickest) continue;
            thinnest = thinnest == 0 ? thickness : std::min(thinnest, thickness);
        }
        return std::max(thinnest, thickest);
    }

    const Section& section() const { return section_; }

private:
    const StockShape& member_;
    const BackingRoom& room_;
    const Section& section_;
};

// ---- angle --------------------------------------------------------------------------------------

bool overlap(const Backing& one, const Backing& other) {
    return one.lo[0] < other.hi[0] && other.lo[0] < one.hi[0] && one.lo[1] < other.hi[1] &&
           other.lo[1] < one.hi[1];
}

void add_flats_in_angle(std::vector<Backings>& ways, const Sides& sides) {
    const Section& angle = sides.section();
    const Nm from = sides.beside(angle.thickness.nm(), true);
    Backings both;
    const bool fit = sides.add(both, 0, {from, angle.a.nm()}) &&
                     sides.add(both, 1, {from, angle.b.nm()}) && !overlap(both[0], both[1]);
    if (fit) ways.push_back(std::move(both));
}

// An angle whose heel lies in the root of the member, its own a along the member's axis `a_along`.
Backing nested(const StockShape& shape, const Section& inner, Nm root, std::size_t a_along) {
    Backing backing{.shape = &shape, .datum = {root, root}, .a_along = a_along, .away = {1, 1}};
    backing.lo = {root, root};
    backing.hi[a_along] = root + inner.a.nm();
    backing.hi[1 - a_along] = root + inner.b.nm();
    return backing;
}

// Flush with the member's toes or short of them rather than beyond; then the larger one.
Nm fault_of(const Backing& backing, const Section& outer) {
    const Nm beyond = std::max<Nm>(0, backing.hi[0] - outer.a.nm()) +
                      std::max<Nm>(0, backing.hi[1] - outer.b.nm());
    const Nm short_of = std::max<Nm>(0, outer.a.nm() - backing.hi[0]) +
                        std::max<Nm>(0, outer.b.nm() - backing.hi[1]);
    return 4 * beyond + short_of;
}

// Both legs hold a row beside the nested angle's own root.
bool holds_rows(const Backing& backing, const Section& outer, const Section& inner, Nm width) {
    const std::array<Nm, 2> toe{outer.a.nm(), outer.b.nm()};
    return std::min(backing.hi[0], toe[0]) - backing.lo[0] - inner.thickness.nm() >= width &&
           std::min(backing.hi[1], toe[1]) - backing.lo[1] - inner.thickness.nm() >= width;
}

void add_nested_angle(std::vector<Backings>& ways,
                      const StockShape& member,
                      const BackingRoom& room,
                      const Section& outer) {
    if (outer.root_radius.nm() > 0) return;
    std::optional<Backing> best;
    const auto consider = [&](const StockShape& shape) {
        if (!is_of(room, shape, SectionForm::angle)) return;
        const Section& inner = room.catalogue.sections[shape.section];
        if (inner.thickness < outer.thickness) return;
        for (const std::size_t a_along : {std::size_t{0}, std::size_t{1}}) {
            const auto next = nested(shape, inner, outer.thickness.nm(), a_along);
            if (!holds_rows(next, outer, inner, room.least_width)) continue;
            if (!best || fault_of(next, outer) < fault_of(*best, outer)) best = next;
        }
    };
    consider(member);
    for (const auto& shape : room.shapes) consider(shape);
    if (best) ways.push_back({*best});
}

// ---- channel, tube ------------------------------------------------------------------------------

void add_in_channel(std::vector<Backings>& ways, const Sides& sides) {
    const Section& channel = sides.section();
    const Nm flange = channel.thickness.nm();
    const Nm web = channel.web_thickness.nm();
    const auto web_stretch = [&](bool flanges) {
        const Nm aside = sides.beside(flange, flanges);
        return Stretch{aside, channel.a.nm() - aside};
    };
    const auto flange_stretch = [&](bool with_web) {
        return Stretch{sides.beside(web, with_web), channel.b.nm()};
    };
    const auto add_flanges = [&](Backings& all, bool with_web) {
        return sides.add(all, 1, flange_stretch(with_web)) &&
               sides.add(all, 2, flange_stretch(with_web)) &&
               !overlap(all[all.size() - 2], all.back());
    };
    Backings all;
    if (sides.add(all, 0, web_stretch(true)) && add_flanges(all, true)) ways.push_back(all);
    Backings flanges;
    if (add_flanges(flanges, false)) ways.push_back(flanges);
    Backings only_web;
    if (sides.add(only_web, 0, web_stretch(false))) ways.push_back(only_web);
}

void add_on_tube(std::vector<Backings>& ways, const Sides& sides) {
    const Section& tube = sides.section();
    const Nm rounding = tube.toe_radius.nm();
    const Stretch along_a{rounding, tube.a.nm() - rounding};
    const Stretch along_b{rounding, tube.b.nm() - rounding};
    Backings sides_a;
    if (sides.add(sides_a, 0, along_a, true) && sides.add(sides_a, 2, along_a, true)) {
        ways.push_back(sides_a);
    }
    Backings sides_b;
    if (sides.add(sides_b, 1, along_b, true) && sides.add(sides_b, 3, along_b, true)) {
        ways.push_back(sides_b);
    }
}

}  // namespace

std::vector<Backings> backings_for(const StockShape& member, const BackingRoom& room) {
    const Sides sides(member, room);
    std::vector<Backings> ways;
    switch (sides.section().form) {
        case SectionForm::flat: {
            Backings one;
            if (sides.add(one, 0, {0, sides.section().a.nm()})) ways.push_back(one);
            break;
        }
        case SectionForm::angle:
            add_flats_in_angle(ways, sides);
            add_nested_angle(ways, member, room, sides.section());
            break;
        case SectionForm::channel:
            add_in_channel(ways, sides);
            break;
        case SectionForm::tube:
            add_on_tube(ways, sides);
            break;
    }
    return ways;
}

std::optional<std::string> flat_that_backs(const StockShape& member, const BackingRoom& room) {
    const auto& sections = room.catalogue.sections;
    const Section& of = sections[member.section];
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const Section& flat = sections[i];
        if (flat.form != SectionForm::flat || flat.system != of.system) continue;
        if (flat.thickness != of.thickness) continue;
        if (best && flat.a <= sections[*best].a) continue;
        const std::array<StockShape, 1> only{stock_shape(room.catalogue, static_cast<Index>(i))};
        BackingRoom with = room;
        with.shapes = only;
        const auto ways = backings_for(member, with);
        const bool serves = std::ranges::any_of(
            ways, [&](const Backings& way) { return way[0].shape == &only[0]; });
        if (serves) best = i;
    }
    if (!best) return std::nullopt;
    return sections[*best].id;
}

}  // namespace model

#include "model/resolve/panel_row.h"

#include "model/resolve/lap_polygon.h"
#include "model/resolve/lap_room.h"
#include "model/resolve/layout_rules.h"
#include "model/resolve/panel_way.h"
#include "model/resolve/surroundings.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace model {
namespace {

// A rectangle or a round that no centre lies in.
struct Taken {
    Region region;
    bool is_round = false;  // then the circle that just fits the region
};

Nm half_chord(Nm radius, Nm off) {
    if (off >= radius) return 0;
    const auto r = static_cast<double>(radius);
    const auto o = static_cast<double>(off);
    return static_cast<Nm>(std::ceil(std::sqrt(r * r - o * o)));
}

class RowSearch {
public:
    RowSearch(const Catalogue& catalogue,
              const Shop& rules,
              const Resolved& resolved,
              const PlacedPanel& panel,
              Index number,
              const PanelRest& rest,
              const FastenerChoice& choice)
        : catalogue_{catalogue},
          rules_{rules},
          out_{resolved},
          panel_{panel},
          number_{number},
          rest_{rest},
          choice_{choice},
          edge_{edge_distance(rules, choice.diameter)} {}

    PanelRow best() {
        PanelRow row = best_with(false);
        if (!row.centres.empty()) return row;
        row = best_with(true);
        row.long_nose = true;
        return row;
    }

private:
    Nm apart_from(Nm diameter) const { return pitch(rules_, std::max(diameter, choice_.diameter)); }

    PanelRow best_with(bool long_nose) {
        taken_.clear();
        take_sheet();
        take_slanting_ends();
        take_pieces(long_nose);
        take_ways_to_feet();
        take_fasteners();
        const std::size_t across = 1 - rest_.along;
        const Nm step = out_.shop.graduation;
        const Nm phase = panel_.sheet.bounds.lo[across];
        const Nm least = rest_.lap.lo[across] + edge_ - phase;
        const Nm most = rest_.lap.hi[across] - edge_ - phase;
        PanelRow best;
        if (least > most) return best;
        // The middle first, then by turns to either side.
        const Nm middle = (least + most) / 2 / step;
        const Nm stride = std::max<Nm>(1, (most - least) / step / most_tries);
        for (Nm i = 0; i <= 2 * (most_tries + 1); ++i) {
            const Nm by = stride * ((i + 1) / 2) * (i % 2 == 0 ? 1 : -1);
            const Nm at = (middle + by) * step;
            if (at < least || at > most) continue;
            PanelRow row = row_at(phase + at);
            if (is_better(row, best)) best = std::move(row);
            if (!best.centres.empty() && best.gap <= panel_.pitch) break;
        }
        return best;
    }

    static bool is_better(const PanelRow& row, const PanelRow& than) {
        if (row.centres.empty() != than.centres.empty()) return than.centres.empty();
        if (row.gap != than.gap) return row.gap < than.gap;
        return row.centres.size() > than.centres.size();
    }

    PanelRow row_at(Nm gauge) const {
        const std::size_t k = rest_.along;
        RowRoom room{.least = rest_.lap.lo[k] + edge_,
                     .most = rest_.lap.hi[k] - edge_,
                     .step = out_.shop.graduation,
                     .phase = panel_.sheet.bounds.lo[k],
                     .apart = apart_from(choice_.diameter),
                     .pitch = panel_.pitch};
        for (const auto& taken : taken_) {
            const Region& region = taken.region;
            if (gauge <= region.lo[1 - k] || gauge >= region.hi[1 - k]) continue;
            Nm in = 0;
            if (taken.is_round) {
                const Nm radius = (region.hi[k] - region.lo[k]) / 2;
                const Nm off = std::abs(gauge - (region.lo[1 - k] + region.hi[1 - k]) / 2);
                in = radius - half_chord(radius, off);
            }
            room.blocked.push_back({region.lo[k] + in, region.hi[k] - in});
        }
        PanelRow row;
        const auto centres = spaced_row(std::move(room));
        row.gap = greatest_gap(centres);
        if (!centres.empty()) {
            row.gap = std::max(
                {row.gap, centres.front() - rest_.lap.lo[k], rest_.lap.hi[k] - centres.back()});
        }
        for (const Nm centre : centres) {
            row.centres.push_back(k == 0 ? std::array{centre, gauge} : std::array{gauge, centre});
        }
        return row;
    }

    void take(const Region& region, bool is_round = false) { taken_.push_back({region, is_round}); }

    void take_sheet() {
        for (const auto& gone : panel_.sheet.gone) take(grown(gone, edge_));
        for (const auto& hole : panel_.clear_holes) {
            take(grown({hole.at, hole.at}, hole.diameter / 2 + edge_), true);
        }
    }

    // A mitred end runs slantwise through the wall, or bevels it.
    void take_slanting_ends() {
        const Piece& member = out_.pieces[rest_.piece];
        const LapAxes axes{.axis = panel_.face.axis};
        std::vector<Region> regions;
        add_slanting_edges(axes, member, member.plates[rest_.wall], edge_, rest_.lap, regions);
        for (const auto& region : regions) take(region);
    }

    // Beyond the far side of the stack (the tail) and beyond the sheet (the head and the tool).
    void take_pieces(bool long_nose) {
        const Piece& member = out_.pieces[rest_.piece];
        const Box& wall = member.plates[rest_.wall].box;
        const PanelFace& face = panel_.face;
        const bool inside = panel_.rests_inside;
        const Nm far = inside ? outer_side(face, wall) : inner_side(face, wall);
        const Nm near = inside ? panel_.from : panel_.to;
        const std::array tail{ClearSpace{0, choice_.tail_reach, choice_.tail_radius}};
        const Nm behind_nose = long_nose ? out_.shop.nose_radius : out_.shop.housing_radius;
        const std::array head{ClearSpace{0, out_.shop.nose_reach,
                                         std::max(choice_.head_radius, out_.shop.nose_radius)},
                              ClearSpace{out_.shop.nose_reach, tool_length, behind_nose}};
        const ResolvedFrame& frame = out_.frames[member.frame];
        for (Index i = 0; i < frame.piece_count; ++i) {
            const Index piece = frame.first_piece + i;
            for (const auto& plate : walls_of(out_.pieces[piece])) {
                const Nm outer = outer_side(face, plate.box);
                const Nm inner = inner_side(face, plate.box);
                // Heights beyond either surface, away from the stack.
                const std::array of_tail = inside ? std::array{inner - far, outer - far}
                                                  : std::array{far - outer, far - inner};
                const std::array of_head = inside ? std::array{near - outer, near - inner}
                                                  : std::array{inner - near, outer - near};
                take_plate(plate, of_tail, tail);
                if (piece != number_) take_plate(plate, of_head, head);
            }
        }
    }

    // What leans in slices.
    std::vector<Plate> walls_of(const Piece& piece) const {
        const auto walls = piece.walls();
        std::vector<Plate> all(walls.begin(), walls.end());
        if (piece.lean == no_index) return all;
        const Plate whole = all.front();
        all.clear();
        for (const auto& slice : slices_of({out_.outlines, out_.leans}, piece)) {
            all.push_back(whole);
            all.back().box = slice;
        }
        return all;
    }

    // Neither head nor tail stands where a driver must turn a foot's screw.
    void take_ways_to_feet() {
        const Piece& member = out_.pieces[rest_.piece];
        for (const auto& way : ways_to_feet(out_, member.frame)) {
            if (!reaches_stack(way, 2 * choice_.diameter)) continue;
            const Nm radius = std::max(choice_.head_radius, choice_.tail_radius);
            const Region region = grown(seen_on(panel_.face, way), radius);
            if (share_area(region, rest_.lap)) take(region);
        }
    }

    void take_plate(const Plate& plate,
                    const std::array<Nm, 2>& heights,
                    std::span<const ClearSpace> spaces) {
        Nm radius = -1;
        for (const auto& space : spaces) {
            if (heights[0] < space.to && space.from < heights[1]) {
                radius = std::max(radius, space.radius);
            }
        }
        if (radius < 0) return;
        const Region region = grown(seen_on(panel_.face, plate.box), radius);
        if (share_area(region, rest_.lap)) take(region);
    }

    Nm diameter_of(const FastenerSpec& spec) const {
        return spec.kind == FastenerSpec::Kind::blind_rivet
                   ? catalogue_.rivets[spec.index].diameter.nm()
                   : catalogue_.screws[spec.index].diameter.nm();
    }

    void take_fasteners() {
        for (const auto& fastener : out_.fasteners) {
            const Joint& joint = out_.joints[fastener.joint];
            if (joint.frame != out_.pieces[number_].frame) continue;
            const Nm d = diameter_of(fastener.spec);
            const Region axis = seen_on(panel_.face, {fastener.at, fastener.at});
            if (fastener.axis == panel_.face.normal) {
                const Nm radius = apart_from(d);
                if (share_area(grown(axis, radius), rest_.lap) && is_level(fastener, d)) {
                    take(grown(axis, radius), true);
                }
                continue;
            }
            take_crossing(fastener, d);
        }
    }

    // Whether any part of it, and twice its diameter beyond, is at the height of the stack, the
    // head or the tail.
    bool is_level(const Fastener& fastener, Nm d) const {
        const auto stretch = body_box(fastener, d);
        return reaches_stack(stretch, 2 * choice_.diameter);
    }

    bool reaches_stack(const Box& box, Nm beyond) const {
        const Box& wall = out_.pieces[rest_.piece].plates[rest_.wall].box;
        const Nm least = std::min(panel_.from, inner_side(panel_.face, wall)) - beyond;
        const Nm most = std::max(panel_.to, outer_side(panel_.face, wall)) + beyond;
        return inner_side(panel_.face, box) < most && least < outer_side(panel_.face, box);
    }

    // Head, shank and tail: no part is further from the axis than a diameter and a tenth.
    static Box body_box(const Fastener& fastener, Nm d) {
        Box box{fastener.at, fastener.at};
        for (std::size_t k = 0; k < 3; ++k) {
            const bool is_axis = k == fastener.axis;
            const Nm a = is_axis ? -fastener.drive * d / 2 : -d * 11 / 10;
            const Nm b = is_axis ? fastener.drive * (fastener.grip + d) : d * 11 / 10;
            box.lo[k] += std::min(a, b);
            box.hi[k] += std::max(a, b);
        }
        return box;
    }

    void take_crossing(const Fastener& fastener, Nm d) {
        const Box box = body_box(fastener, d);
        if (!reaches_stack(box, choice_.diameter)) return;
        const Nm radius = std::max(choice_.head_radius, choice_.diameter * 3 / 4);
        const Region region = grown(seen_on(panel_.face, box), radius);
        if (share_area(region, rest_.lap)) take(region);
    }

    // Gauges that are tried on either side of the middle.
    static constexpr Nm most_tries = 6;

    const Catalogue& catalogue_;
    const Shop& rules_;
    const Resolved& out_;
    const PlacedPanel& panel_;
    Index number_;
    const PanelRest& rest_;
    const FastenerChoice& choice_;
    Nm edge_;
    std::vector<Taken> taken_;
};

}  // namespace

PanelRow panel_row(const Catalogue& catalogue,
                   const Shop& rules,
                   const Resolved& resolved,
                   const PlacedPanel& panel,
                   Index number,
                   const PanelRest& rest,
                   const FastenerChoice& choice) {
    return RowSearch(catalogue, rules, resolved, panel, number, rest, choice).best();
}

}  // namespace model

#include "model/resolve/bar_cuts.h"

#include "model/resolve/piece_place.h"

#include <algorithm>
#include <cstddef>

namespace model {
namespace {

// Shortens a wall along one axis by what lies over one of its ends.
void step_over(std::array<Nm, 2>& range, Nm lo, Nm hi) {
    if (lo <= range[0] && hi < range[1]) range[0] = std::max(range[0], hi);
    if (hi >= range[1] && lo > range[0]) range[1] = std::min(range[1], lo);
}

}  // namespace

bool has_square_ends(const Piece& piece) {
    return std::ranges::all_of(piece.ends, [](const PieceEnd& end) { return end == PieceEnd{}; });
}

engine::BarCut end_cut(const PieceEnd& end, std::span<const SectionPlate> walls) {
    if (end.slope[0] == 0.0 && end.slope[1] == 0.0) return {};
    double least = 0.0;
    bool is_first = true;
    for (const auto& wall : walls) {
        if (wall.is_root_fillet) continue;
        double recedes = 0.0;
        for (std::size_t axis = 0; axis < 2; ++axis) {
            recedes += std::min(end.slope[axis] * in_mm(wall.lo[axis]),
                                end.slope[axis] * in_mm(wall.hi[axis]));
        }
        least = is_first ? recedes : std::min(least, recedes);
        is_first = false;
    }
    return {.recedes = -least, .slope = end.slope};
}

std::array<Nm, 2> notch_range(std::size_t wall_index,
                              const Section& section,
                              std::span<const SectionPlate> walls) {
    const auto& wall = walls[wall_index];
    const auto along = static_cast<std::size_t>(1 - wall.normal_axis);
    std::array<Nm, 2> range{wall.lo[along], wall.hi[along]};
    for (const auto& other : walls) {
        if (!other.is_root_fillet && other.normal_axis != wall.normal_axis)
            step_over(range, other.lo[along], other.hi[along]);
    }
    for (const auto& fillet : walls) {
        if (fillet.is_root_fillet) step_over(range, fillet.lo[along], fillet.hi[along]);
    }
    if (section.form == SectionForm::tube) {
        const Nm rounding = section.toe_radius.nm();
        range[0] = std::max(range[0], wall.lo[along] + rounding);
        range[1] = std::min(range[1], wall.hi[along] - rounding);
    }
    return range;
}

std::vector<engine::BarNotch> end_notches(const Piece& piece,
                                          const Section& section,
                                          std::span<const SectionPlate> walls) {
    std::vector<engine::BarNotch> notches;
    for (std::size_t i = 0; i < walls.size() && i < piece.ends[0].wall_back.size(); ++i) {
        const std::array<Nm, 2> back{piece.ends[0].wall_back[i], piece.ends[1].wall_back[i]};
        if (walls[i].is_root_fillet || (back[0] <= 0 && back[1] <= 0)) continue;
        const auto along = static_cast<std::size_t>(1 - walls[i].normal_axis);
        auto lo = walls[i].lo;
        auto hi = walls[i].hi;
        const auto range = notch_range(i, section, walls);
        lo[along] = range[0];
        hi[along] = range[1];
        notches.push_back(
            {.lo = {in_mm(lo[0]), in_mm(lo[1])},
             .hi = {in_mm(hi[0]), in_mm(hi[1])},
             .back = {in_mm(std::max<Nm>(0, back[0])), in_mm(std::max<Nm>(0, back[1]))}});
    }
    return notches;
}

void collect_cross_holes(std::vector<engine::CrossHole>& into,
                         const Resolved& resolved,
                         const Piece& piece,
                         std::span<const SectionPlate> walls) {
    into.clear();
    for (const auto& hole : resolved.holes_of(piece)) {
        if (hole.wall >= walls.size() || walls[hole.wall].is_root_fillet) continue;
        const auto& wall = walls[hole.wall];
        const auto normal = static_cast<std::size_t>(wall.normal_axis);
        into.push_back({.axis = static_cast<std::uint8_t>(normal),
                        .from = in_mm(wall.lo[normal]),
                        .to = in_mm(wall.hi[normal]),
                        .across = in_mm(hole.gauge),
                        .along = in_mm(hole.from_datum),
                        .radius = in_mm(hole.diameter) / 2.0});
    }
}

}  // namespace model

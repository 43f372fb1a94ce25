#include "model/schedule/wall_outline.h"

#include "model/resolve/bar_cuts.h"
#include "model/resolve/piece_place.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace model {
namespace {

// A wall's face seen from outside: v across it, u along the piece.
class Face {
public:
    Face(const Piece& piece,
         const Section& section,
         std::span<const SectionPlate> walls,
         std::uint8_t wall)
        : piece_{piece}, wall_{walls[wall]} {
        for (std::size_t end = 0; end < 2; ++end) cuts_[end] = end_cut(piece.ends[end], walls);
        own_range_ = notch_range(wall, section, walls);
        for (std::size_t end = 0; end < 2; ++end) back_[end] = piece.ends[end].wall_back[wall];
        normal_ = static_cast<std::size_t>(wall_.normal_axis);
    }

    Corners outline(bool is_far) const {
        const bool is_hi = is_far == (wall_.outward < 0);
        const Nm depth = is_hi ? wall_.hi[normal_] : wall_.lo[normal_];
        Corners corners;
        add_end(corners, 1, depth);
        Corners start;
        add_end(start, 0, depth);
        corners.insert(corners.end(), start.rbegin(), start.rend());
        std::rotate(corners.begin(), corners.end() - 1, corners.end());  // from the datum end
        return corners;
    }

private:
    // From the heel side across, with a step where the notch begins and ends.
    void add_end(Corners& corners, std::size_t end, Nm depth) const {
        const Nm lo = wall_.lo[1 - normal_];
        const Nm hi = wall_.hi[1 - normal_];
        const auto& [from, to] = own_range_;
        const bool is_notched = back_[end] > 0;
        if (is_notched && from > lo) {
            corners.push_back({at(end, lo, depth, 0), lo});
            corners.push_back({at(end, from, depth, 0), from});
        }
        const Nm back = is_notched ? back_[end] : 0;
        const Nm first = is_notched ? from : lo;
        const Nm last = is_notched ? to : hi;
        corners.push_back({at(end, first, depth, back), first});
        corners.push_back({at(end, last, depth, back), last});
        if (is_notched && to < hi) {
            corners.push_back({at(end, to, depth, 0), to});
            corners.push_back({at(end, hi, depth, 0), hi});
        }
    }

    Nm at(std::size_t end, Nm across, Nm depth, Nm back) const {
        const auto& cut = cuts_[end];
        const double mm = cut.recedes + cut.slope[normal_] * in_mm(depth) +
                          cut.slope[1 - normal_] * in_mm(across);
        const Nm recedes = static_cast<Nm>(std::llround(mm * 1e6)) + back;
        return end == 0 ? recedes : piece_.length - recedes;
    }

    const Piece& piece_;
    const SectionPlate& wall_;
    std::array<engine::BarCut, 2> cuts_;
    std::array<Nm, 2> own_range_{};
    std::array<Nm, 2> back_{};
    std::size_t normal_ = 0;
};

}  // namespace

WallOutline wall_outline(const Resolved& resolved,
                         const Piece& piece,
                         const Plate& plate,
                         const Catalogue& catalogue,
                         std::span<const SectionPlate> walls) {
    if (plate.outline < resolved.outlines.size()) {
        const bool is_bevelled = plate.outline_far < resolved.outlines.size();
        return {.near = resolved.outlines[plate.outline],
                .far = is_bevelled ? resolved.outlines[plate.outline_far] : Outline{}};
    }
    const auto wall = wall_placement(resolved, piece, plate, walls);
    if (has_square_ends(piece) || plate.wall >= walls.size()) {
        return {.near = {.corners = {{wall.lo[0], wall.lo[1]},
                                     {wall.hi[0], wall.lo[1]},
                                     {wall.hi[0], wall.hi[1]},
                                     {wall.lo[0], wall.hi[1]}},
                         .cut_outs = {}},
                .far = {}};
    }
    const Face face{piece, catalogue.sections[piece.section], walls, plate.wall};
    WallOutline made{.near = {.corners = face.outline(false), .cut_outs = {}}, .far = {}};
    if (auto far = face.outline(true); far != made.near.corners) made.far.corners = std::move(far);
    return made;
}

}  // namespace model

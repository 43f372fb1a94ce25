#include "model/resolve/piece_place.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <cstddef>

namespace model {
namespace {

using engine::Vector;

Vector in_room(const ResolvedFrame& frame, const Vector& direction) {
    Vector turned{};
    for (std::size_t i = 0; i < 3; ++i) {
        std::array<int, 3> axis{};
        axis[i] = 1;
        const auto in_room = direction_to_room(frame, axis);
        for (std::size_t k = 0; k < 3; ++k)
            if (in_room[k] != 0) turned[k] = direction[i] * in_room[k];
    }
    return turned;
}

Vector along_axis(const ResolvedFrame& frame, std::size_t axis, int sense) {
    std::array<int, 3> in_frame{};
    in_frame[axis] = sense;
    const auto turned = direction_to_room(frame, in_frame);
    return {static_cast<double>(turned[0]), static_cast<double>(turned[1]),
            static_cast<double>(turned[2])};
}

// In the section's own axes: how far the wall's outer face lies from the heel, and its extents.
struct WallInSection {
    std::size_t normal = 0;  // 0: along a, 1: along b
    int inward = 1;
    Nm outer = 0;
    std::array<Nm, 2> across{};
    Nm thickness = 0;
};

WallInSection in_section(const SectionPlate& wall) {
    const auto normal = static_cast<std::size_t>(wall.normal_axis);
    return {.normal = normal,
            .inward = -wall.outward,
            .outer = wall.outward < 0 ? wall.lo[normal] : wall.hi[normal],
            .across = {wall.lo[1 - normal], wall.hi[1 - normal]},
            .thickness = wall.hi[normal] - wall.lo[normal]};
}

WallInSection in_section(const Piece& piece, const Plate& plate) {
    const std::size_t axis = plate.normal_axis;
    const bool is_a = axis == index_of(piece.a_axis);
    const int sense = is_a ? piece.a_sense : piece.b_sense;
    const auto other = 3 - axis - index_of(piece.run);
    const int other_sense = is_a ? piece.b_sense : piece.a_sense;
    const Nm outer = plate.inward > 0 ? plate.box.lo[axis] : plate.box.hi[axis];
    const Nm one = (plate.box.lo[other] - piece.datum[other]) * other_sense;
    const Nm two = (plate.box.hi[other] - piece.datum[other]) * other_sense;
    return {.normal = is_a ? 0U : 1U,
            .inward = plate.inward * sense,
            .outer = (outer - piece.datum[axis]) * sense,
            .across = {std::min(one, two), std::max(one, two)},
            .thickness = plate.box.hi[axis] - plate.box.lo[axis]};
}

}  // namespace

engine::Placement piece_placement(const Resolved& resolved, const Piece& piece) {
    const auto& frame = resolved.frames[piece.frame];
    const auto origin = to_room(frame, piece.datum);
    engine::Placement place{.origin = {in_mm(origin[0]), in_mm(origin[1]), in_mm(origin[2])}};
    if (piece.lean < resolved.leans.size()) {
        const auto& lean = resolved.leans[piece.lean];
        place.x = in_room(frame, lean.a);
        place.y = in_room(frame, lean.b);
        place.z = in_room(frame, lean.run);
        return place;
    }
    const auto run = index_of(piece.run);
    const auto a = index_of(piece.a_axis);
    place.x = along_axis(frame, a, piece.a_sense);
    place.y = along_axis(frame, 3 - run - a, piece.b_sense);
    place.z = along_axis(frame, run, piece.run_sense);
    return place;
}

WallPlacement wall_placement(const Resolved& resolved,
                             const Piece& piece,
                             const Plate& plate,
                             std::span<const SectionPlate> walls) {
    const auto wall =
        plate.wall < walls.size() ? in_section(walls[plate.wall]) : in_section(piece, plate);
    const auto own = piece_placement(resolved, piece);
    const auto& normal = wall.normal == 0 ? own.x : own.y;
    return {.place = {.origin = engine::plus(own.origin, engine::scaled(normal, in_mm(wall.outer))),
                      .x = own.z,
                      .y = wall.normal == 0 ? own.y : own.x,
                      .z = engine::scaled(normal, wall.inward)},
            .lo = {0, wall.across[0]},
            .hi = {piece.length, wall.across[1]},
            .thickness = wall.thickness};
}

}  // namespace model

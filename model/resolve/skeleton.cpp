#include "model/resolve/skeleton.h"

#include <algorithm>

namespace model {

StockShape stock_shape(const Catalogue& catalogue, Index section) {
    StockShape shape;
    shape.section = section;
    const Section& of = catalogue.sections[section];
    shape.walls = section_plates(of);
    for (std::size_t k = 0; k < shape.walls.size(); ++k) {
        const SectionPlate& wall = shape.walls[k];
        const auto across = static_cast<std::size_t>(wall.normal_axis);
        if (wall.is_root_fillet || wall.lo[across] != 0 || shape.primary[across] >= 0) continue;
        shape.primary[across] = static_cast<int>(k);
        shape.wall_thickness[across] = wall.hi[across];
        shape.layer[across] = wall.hi[across];
    }
    shape.is_closed = of.form == SectionForm::tube;
    if (shape.is_closed) shape.layer = {of.a.nm(), of.b.nm()};
    return shape;
}

void lay_walls(Piece& piece, std::span<const SectionPlate> walls) {
    const std::size_t run = index_of(piece.run);
    const std::size_t a = index_of(piece.a_axis);
    const std::array<std::size_t, 2> axis{a, 3 - run - a};
    const std::array<int, 2> sense{piece.a_sense, piece.b_sense};
    piece.plate_count = 0;
    for (std::size_t k = 0; k < walls.size(); ++k) {
        const SectionPlate& wall = walls[k];
        const auto normal = static_cast<std::size_t>(wall.normal_axis);
        Plate& plate = piece.plates[piece.plate_count++];
        plate.box = {piece.datum, piece.datum};
        const Nm far = piece.datum[run] + piece.run_sense * piece.length;
        plate.box.lo[run] = std::min(piece.datum[run], far);
        plate.box.hi[run] = std::max(piece.datum[run], far);
        for (std::size_t s = 0; s < 2; ++s) {
            const Nm p = piece.datum[axis[s]] + sense[s] * wall.lo[s];
            const Nm q = piece.datum[axis[s]] + sense[s] * wall.hi[s];
            plate.box.lo[axis[s]] = std::min(p, q);
            plate.box.hi[axis[s]] = std::max(p, q);
        }
        plate.wall = static_cast<std::uint8_t>(k);
        plate.normal_axis = static_cast<std::uint8_t>(axis[normal]);
        plate.inward = static_cast<std::int8_t>(-wall.outward * sense[normal]);
        plate.is_root_fillet = wall.is_root_fillet;
        piece.extents = k == 0 ? plate.box : engine::hull(piece.extents, plate.box);
    }
}

Box wall_box(const Bar& bar, const SectionPlate& wall, Nm from, Nm to) {
    Box box;
    const std::size_t run = index_of(bar.run);
    box.lo[run] = from;
    box.hi[run] = to;
    for (std::size_t i = 0; i < 2; ++i) {
        const std::size_t s = section_axis(bar, i);
        const Nm origin = heel(bar, i);
        const Nm p = origin + bar.leg[i] * wall.lo[s];
        const Nm q = origin + bar.leg[i] * wall.hi[s];
        box.lo[bar.axis[i]] = std::min(p, q);
        box.hi[bar.axis[i]] = std::max(p, q);
    }
    return box;
}

Box body(const Bar& bar) {
    Box all = wall_box(bar, bar.shape->walls.front(), bar.from, bar.to);
    for (const auto& wall : bar.shape->walls) {
        all = engine::hull(all, wall_box(bar, wall, bar.from, bar.to));
    }
    return all;
}

engine::BoxTree tree_of_pieces(const FrameSkeleton& skeleton) {
    std::vector<Box> extents;
    extents.reserve(skeleton.pieces.size());
    for (const auto& piece : skeleton.pieces) extents.push_back(piece.extents);
    return engine::BoxTree(extents);
}

Subject member_subject(const Frame& frame, Index member) {
    return {SubjectKind::member, frame.name, frame.members[member].name};
}

}  // namespace model

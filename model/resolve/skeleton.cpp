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

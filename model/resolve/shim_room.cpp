#include "model/resolve/shim_room.h"

#include "model/resolve/lap_polygon.h"
#include "model/resolve/rect.h"

namespace model {
namespace {

void cut_back(const FrameSkeleton& s, const std::vector<Index>& parts, Lap& lap) {
    for (const Index part : parts) {
        if (part == lap.upper || part == lap.lower) continue;
        if (!keep_off(s.pieces[part], lap)) return;
    }
}

}  // namespace

void keep_shims_clear(const FrameSkeleton& s, std::vector<Lap>& laps) {
    std::vector<Index> parts;
    for (Index i = 0; i < s.pieces.size(); ++i) {
        if (s.bar_of[i] == no_index) parts.push_back(i);
    }
    if (parts.empty()) return;
    for (auto& lap : laps) {
        if (lap.gap > 0) cut_back(s, parts, lap);
    }
    std::erase_if(laps, [](const Lap& lap) { return !has_area(lap.rect, lap.normal_axis); });
}

Box gap_box(const Lap& lap) {
    Box box = lap.rect;
    (lap.towards_lower > 0 ? box.hi : box.lo)[lap.normal_axis] += lap.towards_lower * lap.gap;
    return box;
}

bool keep_off(const Piece& piece, Lap& lap) {
    for (const auto& plate : piece.walls()) {
        if (!engine::overlaps(gap_box(lap), plate.box)) continue;
        lap.rect = without(lap.rect, plate.box, lap.normal_axis);
        if (!has_area(lap.rect, lap.normal_axis)) return false;
    }
    return true;
}

Piece shim_piece(const Lap& lap, Index frame) {
    const std::size_t normal = lap.normal_axis;
    const auto [p, q] = axes_across(normal);
    const bool p_is_longer = lap.rect.hi[p] - lap.rect.lo[p] >= lap.rect.hi[q] - lap.rect.lo[q];
    const std::size_t run = p_is_longer ? p : q;

    Piece shim;
    shim.kind = PieceKind::shim;
    shim.frame = frame;
    shim.run = static_cast<Axis>(run);
    shim.a_axis = static_cast<Axis>(p_is_longer ? q : p);
    shim.length = lap.rect.hi[run] - lap.rect.lo[run];
    shim.extents = gap_box(lap);
    shim.datum = shim.extents.lo;
    shim.plates[0] = {.box = shim.extents, .normal_axis = lap.normal_axis, .inward = 1};
    shim.plate_count = 1;
    return shim;
}

}  // namespace model

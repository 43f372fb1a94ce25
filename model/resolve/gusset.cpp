// A flat plate that laps both members of a flush corner, its free corner cut off from toe to toe.
#include "model/resolve/corner_plate.h"
#include "model/resolve/rect.h"

#include <algorithm>

namespace model {
namespace {

Nm width_along(const Box& box, std::size_t axis) { return box.hi[axis] - box.lo[axis]; }

// A gusset laps each member at least as far as the member is wide: common practice.
Box wanted_rect(const PartMaker& maker,
                const Corner& corner,
                const FlushCorner& flush,
                Nm for_fasteners) {
    const Nm on_lower = std::max(for_fasteners, width_along(flush.lower.box, corner.across));
    const Nm on_upper = std::max(for_fasteners, width_along(flush.upper.box, corner.along));
    const Nm gap = maker.room().shop.end_gap;
    Box rect = engine::hull(flush.upper.box, flush.upper.box);
    const std::size_t l = corner.along;
    const std::size_t u = corner.across;
    if (corner.into > 0) {
        rect.hi[l] = std::max(corner.end, rect.hi[l] + gap) + on_lower;
    } else {
        rect.lo[l] = std::min(corner.end, rect.lo[l] - gap) - on_lower;
    }
    rect.lo[u] = flush.lower.box.lo[u];
    rect.hi[u] = flush.lower.box.hi[u];
    (flush.toe > 0 ? rect.hi : rect.lo)[u] += flush.toe * on_upper;
    rect.lo[u] = std::max(rect.lo[u], flush.upper.box.lo[u]);
    rect.hi[u] = std::min(rect.hi[u], flush.upper.box.hi[u]);
    // No further than the lower piece goes.
    rect.lo[l] = std::max(rect.lo[l], std::min(flush.lower.box.lo[l], flush.upper.box.lo[l]));
    rect.hi[l] = std::min(rect.hi[l], std::max(flush.lower.box.hi[l], flush.upper.box.hi[l]));
    return rect;
}

Piece gusset_piece(const Corner& corner, const FlushCorner& flush, const Box& box) {
    Piece piece{.kind = PieceKind::gusset};
    piece.run = static_cast<Axis>(corner.along);
    piece.run_sense = corner.into;
    piece.a_axis = static_cast<Axis>(corner.across);
    piece.a_sense = flush.toe;
    piece.b_sense = flush.away;
    piece.length = width_along(box, corner.along);
    piece.datum[corner.along] = corner.into > 0 ? box.lo[corner.along] : box.hi[corner.along];
    piece.datum[corner.across] = flush.toe > 0 ? box.lo[corner.across] : box.hi[corner.across];
    piece.datum[corner.normal] = flush.face;
    piece.plates[0] = {.box = box,
                       .normal_axis = static_cast<std::uint8_t>(corner.normal),
                       .inward = static_cast<std::int8_t>(flush.away)};
    piece.plate_count = 1;
    piece.extents = box;
    return piece;
}

// The corner beyond both members is cut off, from where the upper one's toe leaves the plate to
// where the lower one's does.
Outline cut_corner(const Piece& piece, const Corner& corner, const FlushCorner& flush) {
    const Nm length = piece.length;
    const Nm width = width_along(piece.extents, corner.across);
    const auto from_datum = [&](const Box& wall, std::size_t axis, int sense) {
        const Nm edge = sense > 0 ? wall.hi[axis] : wall.lo[axis];
        return (edge - piece.datum[axis]) * sense;
    };
    const Nm upper_toe = from_datum(flush.upper.box, corner.along, corner.into);
    const Nm lower_toe = from_datum(flush.lower.box, corner.across, flush.toe);
    if (upper_toe >= length || lower_toe >= width || upper_toe <= 0 || lower_toe <= 0) return {};
    return {.corners = {{0, 0}, {length, 0}, {length, lower_toe}, {upper_toe, width}, {0, width}},
            .cut_outs = {}};
}

}  // namespace

Unsuited add_gusset(PartMaker& maker, const Corner& corner, bool with_corner_square) {
    const FlushCorner flush = flush_corner(maker, corner);
    if (!flush.is_flush) {
        return {"another member sets one of the two in deeper, so a gusset cannot touch both",
                "a staggered lap"};
    }
    const auto thickness_of = [&](const Plate& plate) {
        return width_along(plate.box, corner.normal);
    };
    const Nm thicker = std::max(thickness_of(flush.upper), thickness_of(flush.lower));
    const Nm stated = maker.room().shop.gusset_thickness;
    const Nm thickness = stated > 0 ? stated : thicker;
    const Nm diameter = maker.fastener_diameter(corner.upper, std::max(thicker, thickness));
    const Box rect = wanted_rect(maker, corner, flush, maker.length_for_fasteners(diameter));
    const Box box = maker.free_part(slab_on(flush, corner, rect, thickness), corner.normal);
    const TwoLaps laps = laps_within(flush, corner, box, with_corner_square);
    const Unsuited no_room{"a leg or another part leaves no room for a gusset that laps both",
                           "a corner cleat, or turn the upper member's legs"};
    if (width_along(box, corner.along) <= 0 || width_along(box, corner.across) <= 0) return no_room;
    Piece piece = gusset_piece(corner, flush, box);
    auto outline = cut_corner(piece, corner, flush);
    if (!outline.corners.empty()) piece.plates[0].outline = maker.add_outline(std::move(outline));
    if (!put_in(maker, corner, flush, piece, laps)) return no_room;
    return {};
}

}  // namespace model

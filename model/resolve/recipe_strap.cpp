// Strap: both members in one layer, a flat bar across them.
#include "model/resolve/corner_plate.h"
#include "model/resolve/rect.h"

#include <algorithm>

namespace model {
namespace {

bool never(const Bar&, const Bar&) { return false; }

struct FlatStock {
    const StockShape* shape = nullptr;
    Nm width = 0;
    Nm thickness = 0;
};

// The widest flat among the stock that is no wider than there is room.
FlatStock widest_flat(const PartMaker& maker, Nm room) {
    FlatStock best;
    for (const auto& shape : maker.room().shapes) {
        if (shape.section == no_index) continue;
        const Section& section = maker.room().catalogue.sections[shape.section];
        const bool fits = section.form == SectionForm::flat && section.a.nm() <= room;
        if (!fits || section.a.nm() <= best.width) continue;
        best = {&shape, section.a.nm(), section.thickness.nm()};
    }
    return best;
}

Box reach_of(const PartMaker& maker, const Corner& corner, const FlushCorner& flush, Nm on_lower) {
    Box rect = flush.upper.box;
    const std::size_t l = corner.along;
    const std::size_t u = corner.across;
    const Nm gap = maker.room().shop.end_gap;
    if (corner.into > 0) {
        rect.hi[l] =
            std::min(std::max(corner.end, rect.hi[l] + gap) + on_lower, flush.lower.box.hi[l]);
    } else {
        rect.lo[l] =
            std::max(std::min(corner.end, rect.lo[l] - gap) - on_lower, flush.lower.box.lo[l]);
    }
    rect.lo[u] = std::max(flush.lower.box.lo[u], flush.upper.box.lo[u]);
    rect.hi[u] = std::min(flush.lower.box.hi[u], flush.upper.box.hi[u]);
    return rect;
}

Piece strap_piece(const Corner& corner,
                  const FlushCorner& flush,
                  const FlatStock& flat,
                  const Box& box) {
    Piece piece{.kind = PieceKind::strap};
    piece.stock = flat.shape->stock;
    piece.section = flat.shape->section;
    piece.run = static_cast<Axis>(corner.along);
    piece.run_sense = corner.into;
    piece.a_axis = static_cast<Axis>(corner.across);
    piece.a_sense = flush.toe;
    piece.b_sense = flush.away;
    piece.length = box.hi[corner.along] - box.lo[corner.along];
    piece.datum[corner.along] = corner.into > 0 ? box.lo[corner.along] : box.hi[corner.along];
    piece.datum[corner.across] = flush.toe > 0 ? box.lo[corner.across] : box.hi[corner.across];
    piece.datum[corner.normal] = flush.face;
    lay_walls(piece, flat.shape->walls);
    return piece;
}

// In the middle of the room across it, on a mark from there.
Box middle_of(Box room, const Corner& corner, Nm width, Nm mark) {
    const Nm spare = room.hi[corner.across] - room.lo[corner.across] - width;
    room.lo[corner.across] += spare / 2 / mark * mark;
    room.hi[corner.across] = room.lo[corner.across] + width;
    return room;
}

Unsuited strap_at(PartMaker& maker, const Corner& corner) {
    const FlushCorner flush = flush_corner(maker, corner);
    if (!flush.is_flush) {
        return {"another member sets one of the two in deeper, so a strap cannot touch both",
                "a staggered lap"};
    }
    const Nm wall = flush.upper.box.hi[corner.normal] - flush.upper.box.lo[corner.normal];
    const Nm diameter = maker.fastener_diameter(corner.upper, wall);
    // As far on as fasteners in two rows would need: tried.
    const Box rect = reach_of(maker, corner, flush, 2 * maker.length_for_fasteners(diameter));
    const Box room = maker.free_part(slab_on(flush, corner, rect, wall), corner.normal);
    const FlatStock flat = widest_flat(maker, room.hi[corner.across] - room.lo[corner.across]);
    if (flat.shape == nullptr) {
        return {"no flat bar among the stock is narrow enough to lie on both",
                "flush with a gusset, or add a narrower flat bar to the stock"};
    }
    const Box seat = middle_of(room, corner, flat.width, maker.room().shop.graduation);
    const Box box = maker.free_part(slab_on(flush, corner, seat, flat.thickness), corner.normal);
    const bool is_whole = box.hi[corner.across] - box.lo[corner.across] == flat.width;
    const TwoLaps laps = laps_within(flush, corner, box, true);
    const bool is_long = box.hi[corner.along] > box.lo[corner.along];
    if (!is_whole || !is_long ||
        !put_in(maker, corner, flush, strap_piece(corner, flush, flat, box), laps)) {
        return {"a leg or another part leaves no room for a strap that laps both",
                "a corner cleat, or turn the upper member's legs"};
    }
    return {};
}

}  // namespace

RecipeRow strap() {
    return {.told = {"strap", "both lie in one layer; a piece of flat bar laps both"},
            .unsuited = not_flush,
            .lies_behind = never,
            .in_one_layer = true,
            .cut_from = PartForm::flat,
            .add_parts = strap_at};
}

}  // namespace model

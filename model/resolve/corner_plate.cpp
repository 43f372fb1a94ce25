#include "model/resolve/corner_plate.h"

#include "model/resolve/rect.h"
#include "model/resolve/set_in.h"

#include <algorithm>

namespace model {
namespace {

Nm wall_thickness(const Bar& bar, std::size_t axis) {
    return bar.shape->wall_thickness[section_axis(bar, across_index(bar, axis))];
}

Box beyond_the_corner(const Box& rect, const Box& wall, std::size_t axis, int sense) {
    Box left = rect;
    if (sense > 0) {
        left.lo[axis] = std::max(left.lo[axis], wall.hi[axis]);
    } else {
        left.hi[axis] = std::min(left.hi[axis], wall.lo[axis]);
    }
    return left;
}

}  // namespace

Unsuited not_flush(const FrameSkeleton& s, const Meeting& meeting) {
    const Bar& upper = s.bars[meeting.upper];
    const Bar& lower = s.bars[meeting.lower];
    if (!share_a_face(upper, lower)) {
        return {"they share no face in which both could lie", "a staggered lap", true};
    }
    const std::size_t axis = common_axis(upper, lower);
    if (!upper.shape->is_closed && !lower.shape->is_closed &&
        wall_thickness(upper, axis) != wall_thickness(lower, axis)) {
        return {"their legs are not equally thick, so a flat part cannot touch both",
                "a staggered lap"};
    }
    return {};
}

FlushCorner flush_corner(const PartMaker& maker, const Corner& corner) {
    FlushCorner flush;
    const Plate* upper = maker.primary_wall(corner.upper, corner.normal);
    const Plate* lower = maker.primary_wall(corner.lower, corner.normal);
    if (upper == nullptr || lower == nullptr || upper->inward != lower->inward) return flush;
    const Bar& upper_bar = maker.bar(corner.upper);
    const Bar& lower_bar = maker.bar(corner.lower);
    flush.is_outside = upper_bar.shape->is_closed || lower_bar.shape->is_closed;
    flush.away = flush.is_outside ? -upper->inward : upper->inward;
    const auto face = [&](const Plate& plate) {
        return flush.away > 0 ? plate.box.hi[corner.normal] : plate.box.lo[corner.normal];
    };
    flush.face = face(*upper);
    if (face(*lower) != flush.face) return flush;
    flush.toe = lower_bar.leg[across_index(lower_bar, corner.across)];
    flush.upper = *upper;
    flush.lower = *lower;
    flush.is_flush = true;
    return flush;
}

Box slab_on(const FlushCorner& flush, const Corner& corner, Box rect, Nm thickness) {
    rect.lo[corner.normal] = flush.away > 0 ? flush.face : flush.face - thickness;
    rect.hi[corner.normal] = flush.away > 0 ? flush.face + thickness : flush.face;
    return rect;
}

TwoLaps laps_within(const FlushCorner& flush,
                    const Corner& corner,
                    const Box& rect,
                    bool with_corner_square) {
    TwoLaps laps{common_rect(rect, flush.upper.box, corner.normal, flush.face),
                 common_rect(rect, flush.lower.box, corner.normal, flush.face)};
    if (with_corner_square) return laps;
    laps.on_upper = beyond_the_corner(laps.on_upper, flush.lower.box, corner.across, flush.toe);
    laps.on_lower = beyond_the_corner(laps.on_lower, flush.upper.box, corner.along, corner.into);
    return laps;
}

bool put_in(PartMaker& maker,
            const Corner& corner,
            const FlushCorner& flush,
            Piece part,
            const TwoLaps& laps) {
    part.serves = {maker.piece(corner.upper).member, maker.piece(corner.lower).member};
    const Plate plate = part.plates[0];
    const auto has_room = [&](Index member, const Plate& wall, const Box& rect) {
        if (!has_area(rect, corner.normal)) return false;
        const Piece& piece = maker.piece(member);
        return (flush.is_outside ? maker.fasteners_with_room(part, plate, piece, wall, rect)
                                 : maker.fasteners_with_room(piece, wall, part, plate, rect)) > 0;
    };
    if (!has_room(corner.upper, flush.upper, laps.on_upper)) return false;
    if (!has_room(corner.lower, flush.lower, laps.on_lower)) return false;
    const Index added = maker.add(part);
    const auto lap = [&](Index member, const Plate& wall, const Box& rect) {
        if (flush.is_outside) {
            maker.add_lap(added, plate, member, wall, rect);
        } else {
            maker.add_lap(member, wall, added, plate, rect);
        }
    };
    lap(corner.upper, flush.upper, laps.on_upper);
    lap(corner.lower, flush.lower, laps.on_lower);
    return true;
}

}  // namespace model

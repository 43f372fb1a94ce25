#include "model/resolve/face_laps.h"

#include "model/resolve/rect.h"
#include "model/resolve/shim_room.h"
#include "model/resolve/slanted_end.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

Box flat(Box box, std::size_t normal, Nm position) {
    box.lo[normal] = box.hi[normal] = position;
    return box;
}

}  // namespace

void FaceLaps::find(const BraceLine& line, const BraceFace& face, const LyingPiece& lying) {
    cover_laps(line, lying);
    for (const auto& wall : face.walls) {
        if (wall.is_of_member) find_lap(line, face, lying, wall);
    }
}

void FaceLaps::put_in() {
    std::vector<Lap> kept;
    for (auto& lap : shimmed_) {
        if (keep_off_leaning(lap) && cut_to_marks(lap)) kept.push_back(lap);
    }
    keep_shims_off_leaning();
    laps_.insert(laps_.end(), touching_.begin(), touching_.end());
    laps_.insert(laps_.end(), kept.begin(), kept.end());
}

// The laps of what it lies on, where it touches one of the two walls from outside.
void FaceLaps::cover_laps(const BraceLine& line, const LyingPiece& lying) {
    const Box& own = s_.pieces[lying.piece].plates[0].box;
    for (auto& lap : laps_) {
        if (lap.normal_axis != line.normal || lap.gap > 0 || lap.cover != no_index) continue;
        const auto touches = [&](Index piece, std::uint8_t wall, int away) {
            const Box& box = s_.pieces[piece].plates[wall].box;
            const Nm outer = away > 0 ? box.hi[line.normal] : box.lo[line.normal];
            return outer == (away > 0 ? own.lo[line.normal] : own.hi[line.normal]);
        };
        const bool on_upper = touches(lap.upper, lap.upper_wall, -lap.towards_lower);
        const bool on_lower = touches(lap.lower, lap.lower_wall, lap.towards_lower);
        if (on_upper == on_lower) continue;
        if (area_of(common_polygon(lying.polygon, rectangle(lap.rect, line.axes))) < least_area) {
            continue;
        }
        lap.cover = lying.piece;
        lap.covers_upper = on_upper;
    }
}

void FaceLaps::find_lap(const BraceLine& line,
                        const BraceFace& face,
                        const LyingPiece& lying,
                        const FaceWall& wall) {
    const auto common = lapped_part(lying.polygon, s_, wall);
    if (area_of(common) < least_area) return;
    const bool is_outside = line.side == FaceSide::outside;
    Lap lap{.upper = is_outside ? lying.piece : wall.piece,
            .lower = is_outside ? wall.piece : lying.piece,
            .normal_axis = static_cast<std::uint8_t>(line.normal),
            .towards_lower = face.inward,
            .gap = std::abs(wall.surface - lying.surface),
            .is_of_brace = true};
    (is_outside ? lap.lower_wall : lap.upper_wall) = wall.wall;
    const Nm upper_side = is_outside ? lying.surface : wall.surface;
    if (lap.gap == 0) {
        lap.rect = engine::intersection(box_round(common, line.axes, upper_side),
                                        flat(wall.box, line.normal, upper_side));
        touching_.push_back(lap);
        return;
    }
    lap.rect = rectangle_within(common, line.axes, upper_side);
    for (const std::size_t axis : line.axes) {
        if (lap.rect.lo[axis] >= lap.rect.hi[axis]) return;
    }
    if (keep_free_part(lap)) shimmed_.push_back(lap);
}

// What stands in the gap leaves no place for a shim; false where nothing is left.
bool FaceLaps::keep_free_part(Lap& lap) const {
    const std::size_t n = lap.normal_axis;
    std::vector<Index> found;
    tree_.for_each_touching(gap_box(lap), [&](Index piece) { found.push_back(piece); });
    std::sort(found.begin(), found.end());
    for (const Index piece : found) {
        if (leans(s_.pieces[piece])) continue;  // until all of those stand
        if (!keep_off(s_.pieces[piece], lap)) return false;
    }
    // Two shims cannot lie in one place either.
    for (const std::vector<Lap>* others : {&std::as_const(laps_), &shimmed_}) {
        for (const auto& other : *others) {
            if (other.gap == 0 || !engine::overlaps(gap_box(lap), gap_box(other))) continue;
            if (other.normal_axis != n) return false;
            lap.rect = without(lap.rect, gap_box(other), n);
            if (!has_area(lap.rect, n)) return false;
        }
    }
    return true;
}

// A shim is cut to marks of the tape; false where none is left.
bool FaceLaps::cut_to_marks(Lap& lap) const {
    const Nm step = std::max<Nm>(1, room_.shop.graduation);
    for (const std::size_t axis : axes_across(lap.normal_axis)) {
        const Nm over = (lap.rect.hi[axis] - lap.rect.lo[axis]) % step;
        lap.rect.lo[axis] += over / 2;
        lap.rect.hi[axis] -= over - over / 2;
    }
    return has_area(lap.rect, lap.normal_axis);
}

// The same of what else leans through the gap.
bool FaceLaps::keep_off_leaning(Lap& lap) const {
    for (Index i = 0; i < s_.pieces.size(); ++i) {
        const Piece& other = s_.pieces[i];
        if (!leans(other) || i == lap.upper || i == lap.lower) continue;
        if (!engine::overlaps(gap_box(lap), other.extents)) continue;
        if (face_axis(other) != lap.normal_axis) return false;
        if (!keep_off_slices(other, lap)) return false;
    }
    return true;
}

bool FaceLaps::keep_off_slices(const Piece& leaning, Lap& lap) const {
    for (const auto& slice : slices_of({out_.outlines, out_.leans}, leaning)) {
        if (!engine::overlaps(gap_box(lap), slice)) continue;
        lap.rect = without(lap.rect, slice, lap.normal_axis);
        if (!has_area(lap.rect, lap.normal_axis)) return false;
    }
    return true;
}

// The shim between two members makes way for what leans through their gap.
void FaceLaps::keep_shims_off_leaning() {
    for (auto& lap : laps_) {
        if (lap.gap == 0) continue;
        const Box before = lap.rect;
        for (Index i = 0; i < s_.pieces.size(); ++i) {
            const Piece& piece = s_.pieces[i];
            if (!leans(piece) || i == lap.upper || i == lap.lower) continue;
            if (!engine::overlaps(gap_box(lap), piece.extents)) continue;
            if (!keep_off_slices(piece, lap)) break;
        }
        if (lap.rect != before && has_area(lap.rect, lap.normal_axis)) cut_to_marks(lap);
    }
    std::erase_if(laps_, [](const Lap& lap) { return !has_area(lap.rect, lap.normal_axis); });
}

FlatPolygon lapped_part(const FlatPolygon& polygon, const FrameSkeleton& s, const FaceWall& wall) {
    const Piece& piece = s.pieces[wall.piece];
    return common_polygon(polygon, wall_polygon(piece, piece.plates[wall.wall]));
}

}  // namespace model

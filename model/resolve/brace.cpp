#include "model/resolve/brace.h"

#include "model/resolve/brace_findings.h"
#include "model/resolve/brace_place.h"
#include "model/resolve/rect.h"
#include "model/resolve/shim_room.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace model {
namespace {

class Braces {
public:
    Braces(const PartRoom& room,
           FrameSkeleton& skeleton,
           const Frame& frame,
           const ResolvedFrame& placed,
           Resolved& out,
           std::vector<Lap>& laps)
        : room_{room},
          s_{skeleton},
          frame_{frame},
          placed_{placed},
          out_{out},
          laps_{laps},
          tree_{tree_of_pieces(skeleton)} {}

    void add_all() {
        for (Index i = 0; i < frame_.diagonals.size(); ++i) add(i);
        std::vector<Lap> kept;
        for (auto& lap : shimmed_) {
            if (keep_off_braces(lap) && cut_to_marks(lap)) kept.push_back(lap);
        }
        keep_shims_off_braces();
        laps_.insert(laps_.end(), touching_.begin(), touching_.end());
        laps_.insert(laps_.end(), kept.begin(), kept.end());
    }

private:
    Subject subject_of(const BraceLine& line) const {
        return {SubjectKind::diagonal, frame_.name, frame_.diagonals[line.stated].name};
    }

    void add(Index stated) {
        const auto line = brace_line(room_, frame_, placed_, stated, out_.findings);
        if (!line) return;
        const auto face = brace_face(*line, s_, laps_);
        if (!face) {
            out_.findings.push_back(
                brace_without_face(subject_of(*line), frame_.diagonals[stated].face));
            return;
        }
        auto placed = place_brace(room_, s_, tree_, *line, *face);
        if (!placed) {
            const auto& [from, to] = line->nodes;
            const double apart = std::hypot(static_cast<double>(to[0] - from[0]),
                                            static_cast<double>(to[1] - from[1]));
            out_.findings.push_back(
                brace_without_room(subject_of(*line), Length::from_nm(std::llround(apart))));
            return;
        }
        brace_ = std::move(*placed);
        stand();
        find_laps(*line, *face);
    }

    void stand() {
        brace_.piece.lean = static_cast<Index>(out_.leans.size());
        out_.leans.push_back(brace_.lean);
        brace_.piece.plates[0].outline = static_cast<Index>(out_.outlines.size());
        out_.outlines.push_back(brace_.outline);
        s_.pieces.push_back(brace_.piece);
        s_.bar_of.push_back(no_index);
    }

    void find_laps(const BraceLine& line, const BraceFace& face) {
        const auto brace = static_cast<Index>(s_.pieces.size() - 1);
        cover_laps(line, brace);
        for (const auto& wall : face.walls) {
            if (wall.is_of_member) find_lap(line, face, wall, brace);
        }
    }

    // The laps of what it lies on, where the brace touches one of the two walls from outside.
    void cover_laps(const BraceLine& line, Index brace) {
        for (auto& lap : laps_) {
            if (lap.normal_axis != line.normal || lap.gap > 0 || lap.cover != no_index) continue;
            const auto touches = [&](Index piece, std::uint8_t wall, int away) {
                const Box& box = s_.pieces[piece].plates[wall].box;
                const Nm outer = away > 0 ? box.hi[line.normal] : box.lo[line.normal];
                const Box& own = brace_.piece.extents;
                return outer == (away > 0 ? own.lo[line.normal] : own.hi[line.normal]);
            };
            const bool on_upper = touches(lap.upper, lap.upper_wall, -lap.towards_lower);
            const bool on_lower = touches(lap.lower, lap.lower_wall, lap.towards_lower);
            if (on_upper == on_lower) continue;
            if (area_of(common_polygon(brace_.polygon, rectangle(lap.rect, line.axes))) <
                least_area) {
                continue;
            }
            lap.cover = brace;
            lap.covers_upper = on_upper;
        }
    }

    void find_lap(const BraceLine& line, const BraceFace& face, const FaceWall& wall, Index brace) {
        const auto common = lapped_part(brace_.polygon, s_, wall);
        if (area_of(common) < least_area) return;
        const bool is_outside = line.side == FaceSide::outside;
        Lap lap{.upper = is_outside ? brace : wall.piece,
                .lower = is_outside ? wall.piece : brace,
                .normal_axis = static_cast<std::uint8_t>(line.normal),
                .towards_lower = face.inward,
                .gap = std::abs(wall.surface - brace_.surface),
                .is_of_brace = true};
        (is_outside ? lap.lower_wall : lap.upper_wall) = wall.wall;
        const Nm upper_side = is_outside ? brace_.surface : wall.surface;
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

    static Box flat(Box box, std::size_t normal, Nm position) {
        box.lo[normal] = box.hi[normal] = position;
        return box;
    }

    // What stands in the gap leaves no place for a shim; false where nothing is left.
    bool keep_free_part(Lap& lap) const {
        const std::size_t n = lap.normal_axis;
        std::vector<Index> found;
        tree_.for_each_touching(gap_box(lap), [&](Index piece) { found.push_back(piece); });
        std::sort(found.begin(), found.end());
        for (const Index piece : found) {
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
    bool cut_to_marks(Lap& lap) const {
        const Nm step = std::max<Nm>(1, room_.shop.graduation);
        for (const std::size_t axis : axes_across(lap.normal_axis)) {
            const Nm over = (lap.rect.hi[axis] - lap.rect.lo[axis]) % step;
            lap.rect.lo[axis] += over / 2;
            lap.rect.hi[axis] -= over - over / 2;
        }
        return has_area(lap.rect, lap.normal_axis);
    }

    // The same of another brace in the gap.
    bool keep_off_braces(Lap& lap) const {
        for (Index i = 0; i < s_.pieces.size(); ++i) {
            const Piece& other = s_.pieces[i];
            if (other.kind != PieceKind::brace || i == lap.upper || i == lap.lower) continue;
            if (!engine::overlaps(gap_box(lap), other.extents)) continue;
            if (other.plates[0].normal_axis != lap.normal_axis) return false;
            if (!keep_off_slices(other, lap)) return false;
        }
        return true;
    }

    bool keep_off_slices(const Piece& brace, Lap& lap) const {
        for (const auto& slice : slices_of({out_.outlines, out_.leans}, brace)) {
            if (!engine::overlaps(gap_box(lap), slice)) continue;
            lap.rect = without(lap.rect, slice, lap.normal_axis);
            if (!has_area(lap.rect, lap.normal_axis)) return false;
        }
        return true;
    }

    // The shim between two members makes way for a brace that runs through their gap.
    void keep_shims_off_braces() {
        for (auto& lap : laps_) {
            if (lap.gap == 0) continue;
            const Box before = lap.rect;
            for (const auto& piece : s_.pieces) {
                if (piece.kind != PieceKind::brace) continue;
                if (!engine::overlaps(gap_box(lap), piece.extents)) continue;
                if (!keep_off_slices(piece, lap)) break;
            }
            if (lap.rect != before && has_area(lap.rect, lap.normal_axis)) cut_to_marks(lap);
        }
        std::erase_if(laps_, [](const Lap& lap) { return !has_area(lap.rect, lap.normal_axis); });
    }

    PartRoom room_;
    FrameSkeleton& s_;
    const Frame& frame_;
    const ResolvedFrame& placed_;
    Resolved& out_;
    std::vector<Lap>& laps_;
    engine::BoxTree tree_;
    std::vector<Lap> touching_;
    std::vector<Lap> shimmed_;
    PlacedBrace brace_;  // the one in hand
};

}  // namespace

void add_braces(const PartRoom& room,
                FrameSkeleton& skeleton,
                const Frame& frame,
                const ResolvedFrame& placed,
                Resolved& out,
                std::vector<Lap>& laps) {
    if (frame.diagonals.empty()) return;
    Braces(room, skeleton, frame, placed, out, laps).add_all();
}

}  // namespace model

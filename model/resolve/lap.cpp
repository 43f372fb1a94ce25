#include "model/resolve/lap.h"

#include "model/resolve/recipe_row.h"
#include "model/resolve/rect.h"
#include "model/resolve/set_in.h"
#include "model/resolve/shim_room.h"
#include "model/resolve/slanted_end.h"

#include <algorithm>
#include <iterator>
#include <string>

namespace model {
namespace {

class Laps {
public:
    explicit Laps(const FrameSkeleton& s) : s_{s} {}

    std::vector<Lap> find() {
        laps_.reserve(s_.close.size());
        for (const auto& meeting : s_.meetings) {
            const Bar& upper = s_.bars[meeting.upper];
            const Bar& lower = s_.bars[meeting.lower];
            if (!recipe_row(meeting.recipe).laps_directly) continue;
            recipe_ = meeting.recipe;
            const Nm gap = shim_gap(upper, lower);
            for (Index p = 0; p < upper.piece_count; ++p) {
                for (Index q = 0; q < lower.piece_count; ++q) {
                    between(upper.first_piece + p, lower.first_piece + q, common_axis(upper, lower),
                            gap);
                }
            }
        }
        return std::move(laps_);
    }

    std::vector<Lap> find_between(Index upper_piece, Index lower_piece, std::uint8_t recipe) {
        const Bar& upper = s_.bars[s_.bar_of[upper_piece]];
        const Bar& lower = s_.bars[s_.bar_of[lower_piece]];
        recipe_ = recipe;
        between(upper_piece, lower_piece, common_axis(upper, lower), shim_gap(upper, lower));
        return std::move(laps_);
    }

private:
    // How far the lower bar lies behind the upper one where it need not; 0 where they touch or do
    // not share a face.
    static Nm shim_gap(const Bar& upper, const Bar& lower) {
        if (!share_a_face(upper, lower)) return 0;
        const std::size_t axis = common_axis(upper, lower);
        const std::size_t u = across_index(upper, axis);
        const Nm behind = upper.set_in[u] + upper.shape->layer[section_axis(upper, u)];
        return lower.set_in[across_index(lower, axis)] - behind;
    }

    void between(Index upper, Index lower, std::size_t axis, Nm gap) {
        const Piece& a = s_.pieces[upper];
        const Piece& b = s_.pieces[lower];
        Box reach = a.extents;
        reach.lo[axis] -= gap;
        reach.hi[axis] += gap;
        if (!engine::touches(reach, b.extents)) return;
        for (const auto& wall : a.walls()) {
            for (const auto& other : b.walls()) {
                if (wall.normal_axis != axis || other.normal_axis != axis) continue;
                if (wall.is_root_fillet || other.is_root_fillet) continue;
                between(upper, wall, lower, other, gap);
            }
        }
    }

    void between(Index upper, const Plate& wall, Index lower, const Plate& other, Nm gap) {
        const std::size_t axis = wall.normal_axis;
        const Nm up = other.box.lo[axis] - wall.box.hi[axis];    // free space towards plus
        const Nm down = wall.box.lo[axis] - other.box.hi[axis];  // towards minus
        const bool is_shimmed = gap > 0 && (up == gap || down == gap);
        if (up != 0 && down != 0 && !is_shimmed) return;
        const bool towards_plus = up >= 0;
        Lap lap{.upper = upper,
                .lower = lower,
                .upper_wall = wall.wall,
                .lower_wall = other.wall,
                .normal_axis = wall.normal_axis,
                .towards_lower = towards_plus ? 1 : -1,
                .gap = towards_plus ? up : down,
                .recipe = recipe_};
        lap.rect = common_rect(wall.box, other.box, axis,
                               towards_plus ? wall.box.hi[axis] : wall.box.lo[axis]);
        lap.rect = within_slanted_ends(s_.pieces[upper], wall, lap.rect);
        lap.rect = within_slanted_ends(s_.pieces[lower], other, lap.rect);
        if (!has_area(lap.rect, axis)) return;
        if (lap.gap > 0 && !keep_free_part(lap)) return;
        laps_.push_back(lap);
    }

    // Where something else already fills the gap between the two walls there is no place for a
    // shim; false when nothing is left.
    bool keep_free_part(Lap& lap) const {
        const Neighbours around = s_.around[s_.bar_of[lap.lower]];
        for (Index k = around.first; k < around.first + around.count; ++k) {
            const Bar& bar = s_.bars[s_.near[k]];
            for (Index p = bar.first_piece; p < bar.first_piece + bar.piece_count; ++p) {
                if (!keep_off(s_.pieces[p], lap)) return false;
            }
        }
        return true;
    }

    const FrameSkeleton& s_;
    std::vector<Lap> laps_;
    std::uint8_t recipe_ = 0;
};

// A lap holds an end when it begins within this distance of it: the width of the piece's section
// and half as much again, since members may run on past their node.
Nm end_reach(const Piece& piece) {
    Nm width = 0;
    for (std::size_t k = 0; k < 3; ++k) {
        if (k != index_of(piece.run)) {
            width = std::max(width, piece.extents.hi[k] - piece.extents.lo[k]);
        }
    }
    return width + width / 2;
}

Finding loose_end(const FrameSkeleton& s, const Frame& frame, Index piece, bool at_from) {
    const Bar& bar = s.bars[s.bar_of[piece]];
    const Member& member = frame.members[bar.member];
    const Index part = s.pieces[piece].part;
    const bool is_split = bar.piece_count > 1;
    const bool at_node = at_from ? part == 0 : part + 1 == bar.piece_count;
    std::string where = "the end at \"" + (at_from ? member.from : member.to) + "\"";
    if (!at_node) where = "the end where it is parted by another member";
    if (is_split) where += " of piece " + std::to_string(part + 1);
    return {
        .code = "loose_end",
        .severity = Severity::warning,
        .concerns = {member_subject(frame, bar.member)},
        .numbers = {{"piece", static_cast<double>(part + 1)}, {"end", at_from ? 0.0 : 1.0}},
        .what = where + " lies against nothing that it could be fastened to",
        .mend = at_node
                    ? "let it run on past the node by a leg, turn a leg to the other side, or "
                      "add a member that it can lap"
                    : "add a rail or a post that stands on the crossing member and laps this one"};
}

}  // namespace

std::vector<Lap> laps_of(const FrameSkeleton& s) { return Laps(s).find(); }

std::vector<Lap> laps_between(const FrameSkeleton& s,
                              Index upper_piece,
                              Index lower_piece,
                              std::uint8_t recipe) {
    return Laps(s).find_between(upper_piece, lower_piece, recipe);
}

void report_loose_ends(const FrameSkeleton& s,
                       const Frame& frame,
                       const std::vector<Lap>& laps,
                       std::size_t at,
                       std::vector<Finding>& findings) {
    std::vector<std::array<bool, 2>> held(s.pieces.size(), {false, false});
    for (const auto& lap : laps) {
        for (const Index i : {lap.upper, lap.lower}) {
            const Piece& piece = s.pieces[i];
            const std::size_t run = index_of(piece.run);
            const Nm reach = end_reach(piece);
            held[i][0] = held[i][0] || lap.rect.lo[run] - piece.extents.lo[run] <= reach;
            held[i][1] = held[i][1] || piece.extents.hi[run] - lap.rect.hi[run] <= reach;
        }
    }
    std::vector<Finding> loose;
    for (Index i = 0; i < s.pieces.size(); ++i) {
        if (s.bar_of[i] == no_index) continue;
        for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
            if (!held[i][end]) loose.push_back(loose_end(s, frame, i, end == 0));
        }
    }
    findings.insert(findings.begin() + static_cast<std::ptrdiff_t>(at),
                    std::make_move_iterator(loose.begin()), std::make_move_iterator(loose.end()));
}

}  // namespace model

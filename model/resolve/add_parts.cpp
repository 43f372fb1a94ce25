// Where lower pieces end at upper ones, and what each recipe puts there.
#include "model/resolve/part_maker.h"
#include "model/resolve/piece_subject.h"
#include "model/resolve/recipe_row.h"

#include <string>

namespace model {
namespace {

// Whether the piece's end at `end`, going on into `into`, stands at the other piece: within it or a
// gap or two before it.
bool ends_at(const Box& other, std::size_t along, Nm end, int into, Nm reach) {
    if (into > 0) return end > other.lo[along] && end <= other.hi[along] + reach;
    return end < other.hi[along] && end >= other.lo[along] - reach;
}

bool is_level_with(const Box& a, const Box& b, std::size_t axis) {
    return a.lo[axis] <= b.hi[axis] && b.lo[axis] <= a.hi[axis];
}

void collect_corners(const FrameSkeleton& s,
                     const Meeting& meeting,
                     Nm end_gap,
                     std::vector<Corner>& corners) {
    const Bar& upper = s.bars[meeting.upper];
    const Bar& lower = s.bars[meeting.lower];
    Corner corner{.recipe = meeting.recipe};
    corner.along = index_of(lower.run);
    corner.across = index_of(upper.run);
    corner.normal = 3 - corner.along - corner.across;
    for (Index p = upper.first_piece; p < upper.first_piece + upper.piece_count; ++p) {
        const Box& metal = s.pieces[p].extents;
        for (Index q = lower.first_piece; q < lower.first_piece + lower.piece_count; ++q) {
            const Box& piece = s.pieces[q].extents;
            if (!is_level_with(metal, piece, corner.across)) continue;
            if (!is_level_with(metal, piece, corner.normal)) continue;
            for (const int into : {1, -1}) {
                corner.upper = p;
                corner.lower = q;
                corner.into = into;
                corner.end = into > 0 ? piece.lo[corner.along] : piece.hi[corner.along];
                if (ends_at(metal, corner.along, corner.end, into, 2 * end_gap)) {
                    corners.push_back(corner);
                }
            }
        }
    }
}

Finding no_room(const FrameSkeleton& s,
                const Frame& frame,
                const Corner& corner,
                const Unsuited& unsuited) {
    return {.code = "recipe_has_no_room",
            .severity = Severity::error,
            .concerns = {joint_subject(frame, s.pieces[corner.upper], s.pieces[corner.lower])},
            .what = std::string(recipe_row(corner.recipe).told.name) + ": " + unsuited.why,
            .mend = "use another recipe here: " + unsuited.use_instead};
}

}  // namespace

void add_parts(const PartRoom& room,
               FrameSkeleton& s,
               const Frame& frame,
               std::vector<Outline>& outlines,
               std::vector<Lap>& laps,
               std::vector<Finding>& findings) {
    std::vector<Corner> corners;
    for (const auto& meeting : s.meetings) {
        if (recipe_row(meeting.recipe).add_parts == nullptr) continue;
        collect_corners(s, meeting, room.shop.end_gap, corners);
    }
    if (corners.empty()) return;
    PartMaker maker(room, s, outlines, laps);
    for (const auto& corner : corners) {
        maker.begin(corner);
        const auto unsuited = recipe_row(corner.recipe).add_parts(maker, corner);
        if (!unsuited.why.empty()) findings.push_back(no_room(s, frame, corner, unsuited));
    }
}

}  // namespace model

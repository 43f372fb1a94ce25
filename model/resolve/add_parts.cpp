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
                const Unsuited& unsuited,
                bool is_lapped) {
    return {.code = "recipe_has_no_room",
            .severity = is_lapped ? Severity::warning : Severity::error,
            .concerns = {joint_subject(frame, s.pieces[corner.upper], s.pieces[corner.lower])},
            .what = std::string(recipe_row(corner.recipe).told.name) + ": " + unsuited.why,
            .mend = "use another recipe here: " + unsuited.use_instead +
                    (is_lapped ? "; until then the two are fastened where they lap" : "")};
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
    const std::size_t first_finding = findings.size();
    for (const auto& corner : corners) {
        maker.begin(corner);
        const RecipeRow& row = recipe_row(corner.recipe);
        const auto unsuited = row.add_parts(maker, corner);
        if (unsuited.why.empty()) continue;
        const bool is_lapped = !row.laps_directly && maker.lap_directly(corner);
        findings.push_back(no_room(s, frame, corner, unsuited, is_lapped));
    }
    merge_alike(findings, first_finding);
}

}  // namespace model

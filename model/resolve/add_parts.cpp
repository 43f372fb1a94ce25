// Where lower pieces end at upper ones, and what each recipe puts there.
#include "model/resolve/choose_recipes.h"
#include "model/resolve/part_maker.h"
#include "model/resolve/recipe_row.h"

#include <algorithm>
#include <string>
#include <utility>

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

Finding no_room(const FrameSkeleton& s, const Frame& frame, const NoRoom& one, bool is_remade) {
    const auto name = [&](Index bar) { return frame.members[s.bars[bar].member].name; };
    std::string until_then;
    if (is_remade) {
        until_then =
            "; until then it is made as a " + std::string(recipe_row(one.made_as).told.name);
    } else if (one.is_lapped) {
        until_then = "; until then the two are fastened where they lap";
    }
    return {
        .code = "recipe_has_no_room",
        .severity = until_then.empty() ? Severity::error : Severity::warning,
        .concerns = {{SubjectKind::joint, frame.name, name(one.upper) + " + " + name(one.lower)}},
        .what = std::string(recipe_row(one.recipe).told.name) + ": " + one.why,
        .mend = "use another recipe here: " + one.use_instead + until_then};
}

}  // namespace

std::vector<NoRoom> add_parts(const PartRoom& room,
                              const JointOverrides& overrides,
                              FrameSkeleton& s,
                              std::vector<Outline>& outlines,
                              std::vector<Lap>& laps) {
    struct AtCorner {
        Corner corner;
        const Meeting* meeting = nullptr;
    };
    std::vector<AtCorner> corners;
    std::vector<Corner> of_meeting;
    for (const auto& meeting : s.meetings) {
        if (recipe_row(meeting.recipe).add_parts == nullptr) continue;
        of_meeting.clear();
        collect_corners(s, meeting, room.shop.end_gap, of_meeting);
        for (const auto& corner : of_meeting) corners.push_back({corner, &meeting});
    }
    std::vector<NoRoom> no_room;
    if (corners.empty()) return no_room;
    PartMaker maker(room, s, outlines, laps);
    for (const auto& [corner, meeting] : corners) {
        maker.begin(corner,
                    overrides.peek({s.bars[meeting->upper].member, s.bars[meeting->lower].member}));
        const RecipeRow& row = recipe_row(corner.recipe);
        auto unsuited = row.add_parts(maker, corner);
        if (unsuited.why.empty()) continue;
        const bool is_lapped = !row.laps_directly && maker.lap_directly(corner);
        no_room.push_back({meeting->upper, meeting->lower, corner.recipe, std::move(unsuited.why),
                           std::move(unsuited.use_instead), is_lapped, stands_in_for(s, *meeting)});
    }
    return no_room;
}

void report_no_room(const Frame& frame,
                    const FrameSkeleton& s,
                    std::span<const NoRoom> made_otherwise,
                    std::span<const NoRoom> left,
                    std::vector<Finding>& findings) {
    const std::size_t first = findings.size();
    for (const auto& one : made_otherwise) findings.push_back(no_room(s, frame, one, true));
    for (const auto& one : left) {
        const bool is_told = std::ranges::any_of(made_otherwise, [&](const NoRoom& other) {
            return other.upper == one.upper && other.lower == one.lower &&
                   other.recipe == one.recipe;
        });
        if (!is_told) findings.push_back(no_room(s, frame, one, false));
    }
    merge_alike(findings, first);
}

}  // namespace model

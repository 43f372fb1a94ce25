// Braces and panels of one face: they would lie in the same place.
#include "model/resolve/brace.h"
#include "model/resolve/brace_findings.h"
#include "model/resolve/interference.h"
#include "model/resolve/lap_polygon.h"
#include "model/resolve/piece_subject.h"
#include "model/resolve/sheet_outline.h"

#include <algorithm>

namespace model {
namespace {

// Whether all that the brace takes of the panel's place lies in one opening of it. Openings are
// rectangles.
bool runs_through_opening(const Piece& brace,
                          const Piece& panel,
                          const Resolved& resolved,
                          const Slants& slants) {
    const Plate& sheet = panel.plates[0];
    if (sheet.outline == no_index || sheet.normal_axis != brace.plates[0].normal_axis) return false;
    const auto axes = axes_across(sheet.normal_axis);
    const auto common =
        common_polygon(leaning_wall(slants, brace, axes), rectangle(sheet.box, axes));
    return std::ranges::any_of(resolved.outlines[sheet.outline].cut_outs,
                               [&](const Corners& opening) {
                                   const auto polygon = sheet_loop(panel, opening);
                                   return std::ranges::all_of(common, [&](const FlatPoint& corner) {
                                       return depth_within(polygon, corner) >= 0.0;
                                   });
                               });
}

}  // namespace

void report_panels_on_braces(const Project& project, Resolved& resolved) {
    const Slants slants{resolved.outlines, resolved.leans};
    for (const auto& placed : resolved.frames) {
        const auto pieces =
            std::span(resolved.pieces).subspan(placed.first_piece, placed.piece_count);
        for (const auto& brace : pieces) {
            if (brace.kind != PieceKind::brace) continue;
            for (const auto& panel : pieces) {
                if (panel.kind != PieceKind::panel) continue;
                if (!engine::overlaps(brace.extents, panel.extents)) continue;
                const auto depth = Length::from_nm(depth_of_interference(brace, panel, slants));
                if (depth.nm() == 0) continue;
                if (runs_through_opening(brace, panel, resolved, slants)) continue;
                const bool is_sure = panel.plates[0].outline == no_index;
                const Frame& frame = project.frames[brace.frame];
                resolved.findings.push_back(
                    panel_on_brace(piece_subject(frame, brace), piece_subject(frame, panel),
                                   is_sure, length_in_words(depth, project.shown), depth));
            }
        }
    }
}

}  // namespace model

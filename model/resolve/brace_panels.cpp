// What leans and panels: they would lie in the same place.
#include "model/resolve/between_nodes.h"
#include "model/resolve/brace_findings.h"
#include "model/resolve/interference.h"
#include "model/resolve/piece_subject.h"
#include "model/resolve/sheet_outline.h"

namespace model {
void report_panels_on_braces(const Project& project, Resolved& resolved) {
    const Slants slants{resolved.outlines, resolved.leans};
    for (const auto& placed : resolved.frames) {
        const auto pieces =
            std::span(resolved.pieces).subspan(placed.first_piece, placed.piece_count);
        for (const auto& brace : pieces) {
            if (!is_between_nodes(brace.kind)) continue;
            for (const auto& panel : pieces) {
                if (panel.kind != PieceKind::panel) continue;
                if (!engine::overlaps(brace.extents, panel.extents)) continue;
                const auto depth = Length::from_nm(depth_of_interference(brace, panel, slants));
                if (depth.nm() == 0) continue;
                const auto shared = shared_place(slants, brace, panel);
                if (shared == SharedPlace::none) continue;
                const bool is_sure = shared == SharedPlace::sure;
                const Frame& frame = project.frames[brace.frame];
                resolved.findings.push_back(
                    panel_on_brace(piece_subject(frame, brace), piece_subject(frame, panel),
                                   is_sure, depth_in_words(depth, project.shown), depth));
            }
        }
    }
}

}  // namespace model

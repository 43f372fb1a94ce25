#include "model/resolve/panels.h"

#include "model/resolve/added_pieces.h"
#include "model/resolve/panel_fastening.h"
#include "model/resolve/panel_place.h"
#include "model/resolve/piece_holes.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace model {
namespace {

// The longer side is the run; both are measured from the lower corner, on the side that looks out.
Piece piece_of(const PlacedPanel& panel, Index frame) {
    const PanelFace& face = panel.face;
    const Region& bounds = panel.sheet.bounds;
    const bool first_is_longer = bounds.hi[0] - bounds.lo[0] >= bounds.hi[1] - bounds.lo[1];
    const std::size_t run = first_is_longer ? 0 : 1;

    Piece piece{.kind = PieceKind::panel, .frame = frame, .stated = panel.stated};
    piece.run = static_cast<Axis>(face.axis[run]);
    piece.a_axis = static_cast<Axis>(face.axis[1 - run]);
    piece.b_sense = -face.outward;
    piece.length = bounds.hi[run] - bounds.lo[run];
    piece.extents = box_of(panel);
    piece.datum = piece.extents.lo;
    if (face.outward > 0) piece.datum[face.normal] = piece.extents.hi[face.normal];
    piece.plates[0] = {.box = piece.extents,
                       .normal_axis = static_cast<std::uint8_t>(face.normal),
                       .inward = static_cast<std::int8_t>(-face.outward)};
    piece.plate_count = 1;
    return piece;
}

// From the face's axes to the piece's own; exchanging them would turn the corners the other way.
Corners in_piece(const PlacedPanel& panel, const Piece& piece, const Corners& corners) {
    const Region& bounds = panel.sheet.bounds;
    const std::size_t run = panel.face.axis[0] == index_of(piece.run) ? 0 : 1;
    Corners own;
    for (const auto& corner : corners) {
        own.push_back({corner[run] - bounds.lo[run], corner[1 - run] - bounds.lo[1 - run]});
    }
    if (run == 1) std::reverse(own.begin(), own.end());
    return own;
}

// A plain rectangle needs none.
Index outline_of(const PlacedPanel& panel, const Piece& piece, Resolved& out) {
    if (panel.sheet.gone.empty()) return no_index;
    const Outline& outline = panel.sheet.outline;
    Outline own{.corners = in_piece(panel, piece, outline.corners)};
    for (const auto& cut_out : outline.cut_outs) {
        own.cut_outs.push_back(in_piece(panel, piece, cut_out));
    }
    out.outlines.push_back(std::move(own));
    return static_cast<Index>(out.outlines.size() - 1);
}

void add_clear_holes(const PlacedPanel& panel, Index number, Resolved& out) {
    for (const auto& clear : panel.clear_holes) {
        const Fastener& fastener = out.fasteners[clear.fastener];
        Hole hole = hole_in(out.pieces[number], number, 0, fastener.at);
        hole.diameter = clear.diameter;
        hole.drill = clear.drill;
        hole.operation = HoleOperation::clearance;
        hole.fastener = clear.fastener;
        hole.mate = fastener.stack[0].piece;
        out.holes.push_back(hole);
    }
}

}  // namespace

void put_in_panels(const Project& project,
                   const Catalogue& catalogue,
                   Values& values,
                   Resolved& resolved) {
    std::vector<std::vector<PlacedPanel>> panels;
    std::vector<std::vector<Piece>> pieces(project.frames.size());
    bool are_any = false;
    for (Index f = 0; f < project.frames.size(); ++f) {
        panels.push_back(place_panels(project, catalogue, values, f, resolved));
        for (const auto& panel : panels.back()) {
            pieces[f].push_back(piece_of(panel, f));
            pieces[f].back().plates[0].outline = outline_of(panel, pieces[f].back(), resolved);
            are_any = true;
        }
    }
    if (!are_any) return;
    const auto first = add_pieces(pieces, resolved);
    for (Index f = 0; f < project.frames.size(); ++f) {
        for (Index i = 0; i < panels[f].size(); ++i) {
            const PlacedPanel& panel = panels[f][i];
            const bool is_fixed = project.frames[f].panels[panel.stated].use == PanelUse::fixed;
            add_clear_holes(panel, first[f] + i, resolved);
            if (is_fixed) {
                fasten_panel(project, catalogue, panel, first[f] + i, resolved);
            } else {
                const Region& opening = panel.opening;
                resolved.openings.push_back(
                    {first[f] + i, {opening.hi[0] - opening.lo[0], opening.hi[1] - opening.lo[1]}});
            }
        }
    }
    sort_holes(resolved);
}

}  // namespace model

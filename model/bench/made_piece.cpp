#include "model/bench/made_piece.h"

#include "model/resolve/piece_reading.h"
#include "model/resolve/sheet_size.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/saw_seen.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace model {
namespace {

constexpr double slope_parts = 1.0e9;

MadeEnd made_end(const PieceEnd& end) {
    MadeEnd made{.wall_back = end.wall_back};
    for (std::size_t axis = 0; axis < 2; ++axis) {
        made.slope[axis] = std::llround(end.slope[axis] * slope_parts);
    }
    return made;
}

PieceEnd piece_end(const MadeEnd& made) {
    PieceEnd end{.wall_back = made.wall_back};
    for (std::size_t axis = 0; axis < 2; ++axis) {
        end.slope[axis] = static_cast<double>(made.slope[axis]) / slope_parts;
    }
    return end;
}

MadeHole made_hole(const Catalogue& catalogue, const Hole& hole) {
    MadeHole made{.wall = hole.wall,
                  .from_datum = hole.from_datum,
                  .gauge = hole.gauge,
                  .diameter = hole.diameter,
                  .operation = hole.operation};
    if (hole.tap < catalogue.screws.size()) made.tap = catalogue.screws[hole.tap].id;
    return made;
}

std::string alloy_of(const Project& project, const Piece& piece) {
    if (piece.stock < project.stock.size()) return project.stock[piece.stock].alloy;
    if (piece.kind == PieceKind::gusset) return project.shop.gusset_alloy;
    const auto& panels = project.frames[piece.frame].panels;
    const bool is_panel = piece.kind == PieceKind::panel && piece.stated < panels.size();
    return is_panel ? panels[piece.stated].material : std::string();
}

void measure_sheet(const Resolved& resolved, const Piece& piece, MadePiece& made) {
    made.width = sheet_width(resolved, piece);
    made.thickness = sheet_thickness(piece);
    made.end_words = "square; square";
    if (piece.plates[0].outline != no_index) made.end_words = "to its outline; to its outline";
}

bool is_sheet(const MadePiece& made) { return made.section.empty(); }

}  // namespace

MadePiece made_as_resolved(const Project& project,
                           const Catalogue& catalogue,
                           const Resolved& resolved,
                           Index index) {
    const auto& piece = resolved.pieces[index];
    const Lean* lean = piece.lean < resolved.leans.size() ? &resolved.leans[piece.lean] : nullptr;
    MadePiece made{.alloy = alloy_of(project, piece),
                   .length = piece.length,
                   .is_right_handed = handedness(piece, lean) > 0,
                   .ends = {made_end(piece.ends[0]), made_end(piece.ends[1])}};
    if (is_of_sheet(piece.kind)) {
        measure_sheet(resolved, piece, made);
    } else {
        made.section = catalogue.sections[piece.section].id;
        made.end_words = ends_text(project, catalogue, resolved, piece);
    }
    auto outlines = face_outlines(resolved, piece.plates[0]);
    made.outline = std::move(outlines.near);
    made.outline_far = std::move(outlines.far);
    for (const auto& hole : resolved.holes_of(piece)) {
        made.holes.push_back(made_hole(catalogue, hole));
    }
    return made;
}

std::optional<SymmetricShape> shape_of(const Catalogue& catalogue, const MadePiece& made) {
    const bool has_two_faces = !made.outline_far.corners.empty();
    if (is_sheet(made)) {
        return SymmetricShape{.form = SectionForm::flat,
                              .a = made.width,
                              .b = made.thickness,
                              .run = made.length,
                              .is_sheet = true,
                              .is_bevelled = has_two_faces};
    }
    const auto section = std::ranges::find(catalogue.sections, made.section, &Section::id);
    if (section == catalogue.sections.end()) return std::nullopt;
    const bool is_flat = section->form == SectionForm::flat;
    const bool slopes = made.ends[0].slope[1] != 0 || made.ends[1].slope[1] != 0;
    return SymmetricShape{.form = section->form,
                          .a = section->a.nm(),
                          .b = is_flat ? section->thickness.nm() : section->b.nm(),
                          .run = made.length,
                          .is_bevelled = is_flat && (has_two_faces || slopes)};
}

std::vector<Symmetry> turns_of(const SymmetricShape& shape,
                               const MadePiece& made,
                               bool to_right_handed) {
    SymmetricShape of = shape;
    if (shape.is_sheet) of.run = of.a;  // a smaller one may be read along its other side
    // Turned over, a flat whose faces are alike is its own mirror image.
    const bool has_no_hand = shape.form == SectionForm::flat && !shape.is_bevelled;
    const bool wants_mirror = made.is_right_handed != to_right_handed;
    std::vector<Symmetry> turns;
    for (const auto& symmetry : symmetries(of)) {
        if (has_no_hand || is_mirror(symmetry) == wants_mirror) turns.push_back(symmetry);
    }
    return turns;
}

MadePiece turned(const MadePiece& made, const SymmetricShape& shape, const Symmetry& symmetry) {
    MadePiece after = made;
    if (is_mirror(symmetry)) after.is_right_handed = !made.is_right_handed;
    const auto ends =
        ends_after(shape, symmetry, {piece_end(made.ends[0]), piece_end(made.ends[1])});
    after.ends = {made_end(ends[0]), made_end(ends[1])};
    auto outlines = outlines_after(shape, symmetry, 0, {made.outline, made.outline_far});
    after.outline = std::move(outlines.near);
    after.outline_far = std::move(outlines.far);
    for (auto& hole : after.holes) {
        const auto read =
            hole_after(shape, symmetry,
                       {.wall = hole.wall, .from_datum = hole.from_datum, .gauge = hole.gauge});
        hole.wall = read.wall;
        hole.from_datum = read.from_datum;
        hole.gauge = read.gauge;
    }
    if (symmetry.transpose) std::swap(after.length, after.width);
    return after;
}

}  // namespace model

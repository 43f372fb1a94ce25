#include "model/schedule/sheet.h"

#include "engine/files/csv.h"
#include "model/resolve/sheet_size.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/pieces_by_mark.h"
#include "model/schedule/weight.h"

#include <utility>

namespace model {
namespace {

using engine::Length;

const Outline* outline_of(const Resolved& resolved, const Piece& piece) {
    const Index outline = piece.plates[0].outline;
    return outline < resolved.outlines.size() ? &resolved.outlines[outline] : nullptr;
}

std::optional<std::array<Length, 2>> opening_of(const Resolved& resolved, Index piece) {
    for (const auto& opening : resolved.openings) {
        if (opening.piece != piece) continue;
        return std::array{Length::from_nm(opening.size[0]), Length::from_nm(opening.size[1])};
    }
    return std::nullopt;
}

// Where a corner lies: along the length from the datum end, then across from the heel edge.
std::string corners_text(LengthTexts& shown, const Corners& corners) {
    std::string text;
    for (const auto& corner : corners) {
        if (!text.empty()) text += " / ";
        text += std::string(shown(Length::from_nm(corner[0]))) + ", ";
        text += shown(Length::from_nm(corner[1]));
    }
    return text;
}

std::string cut_outs_text(LengthTexts& shown, const Outline& outline) {
    std::string text;
    for (const auto& cut_out : outline.cut_outs) {
        if (!text.empty()) text += "; ";
        text += corners_text(shown, cut_out);
    }
    return text;
}

}  // namespace

std::vector<SheetRow> sheet_rows(const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved) {
    const PieceWords words{project, catalogue, resolved};
    const auto weights = piece_weights_kg(project, catalogue, resolved);
    std::vector<SheetRow> rows;
    for (const auto& group : pieces_by_mark(resolved)) {
        const Index pattern = group.pieces.front();
        const Piece& piece = resolved.pieces[pattern];
        if (!is_of_sheet(piece.kind)) continue;
        const Outline* outline = outline_of(resolved, piece);
        const bool is_plain = outline == nullptr || outline->corners.size() == 4;
        rows.push_back(
            {.mark = group.mark,
             .hand = group.hand,
             .quantity = static_cast<int>(group.pieces.size()),
             .part = words.member(pattern),
             .material = std::string(words.alloy(pattern)),
             .thickness = Length::from_nm(sheet_thickness(piece)),
             .width = Length::from_nm(sheet_width(resolved, piece)),
             .length = Length::from_nm(piece.length),
             .outline = is_plain ? "rectangle" : "see drawing",
             .cut_outs = outline == nullptr ? 0 : static_cast<int>(outline->cut_outs.size()),
             .outline_of = outline == nullptr ? no_index : piece.plates[0].outline,
             .opening = opening_of(resolved, pattern),
             .weight_kg = weights[pattern]});
    }
    return rows;
}

std::string sheet_csv(const Project& project,
                      const Resolved& resolved,
                      const std::vector<SheetRow>& rows) {
    engine::CsvText text{"mark",      "hand",       "quantity",  "part",      "material",
                         "thickness", "width",      "width_mm",  "length",    "length_mm",
                         "outline",   "cut_outs",   "opening_1", "opening_2", "weight",
                         "corners",   "cut_outs_at"};
    LengthTexts shown{project.shown};
    for (const auto& row : rows) {
        const auto opening = [&](std::size_t k) {
            return row.opening ? std::string(shown((*row.opening)[k])) : std::string{};
        };
        const Outline* outline =
            row.outline_of == no_index ? nullptr : &resolved.outlines[row.outline_of];
        const bool is_plain = outline == nullptr || outline->corners.size() == 4;
        text.row({resolved.marks[row.mark].name, name_of(row.hand), std::to_string(row.quantity),
                  row.part, row.material, shown(row.thickness), shown(row.width),
                  decimal_mm(row.width), shown(row.length), decimal_mm(row.length), row.outline,
                  std::to_string(row.cut_outs), opening(0), opening(1),
                  weight_text(row.weight_kg, project.shown),
                  is_plain ? std::string{} : corners_text(shown, outline->corners),
                  outline == nullptr ? std::string{} : cut_outs_text(shown, *outline)});
    }
    return std::move(text).take();
}

}  // namespace model

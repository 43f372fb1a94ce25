#include "editor/brace_facts.h"

#include "editor/dimension_values.h"

namespace editor {

model::Subject subject_of_brace(std::string_view frame, std::string_view brace) {
    return {model::SubjectKind::diagonal, std::string(frame), std::string(brace)};
}

std::optional<model::Index> brace_piece(const model::Project& project,
                                        const model::Resolved& resolved,
                                        std::string_view frame,
                                        std::string_view brace) {
    for (model::Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        if (piece.kind != model::PieceKind::brace || piece.frame >= project.frames.size()) continue;
        const auto& its_frame = project.frames[piece.frame];
        if (its_frame.name != frame || piece.stated >= its_frame.diagonals.size()) continue;
        if (its_frame.diagonals[piece.stated].name == brace) return i;
    }
    return std::nullopt;
}

int fasteners_through(const model::Resolved& resolved, model::Index brace) {
    int count = 0;
    for (const auto& joint : resolved.joints) {
        const bool is_held_here =
            joint.pieces[0] == brace || joint.pieces[1] == brace || joint.brace == brace;
        if (is_held_here) count += static_cast<int>(joint.fastener_count);
    }
    return count;
}

std::string length_text(const model::Piece& piece, const engine::TapeStyle& shown) {
    return quantity_text(
        {.kind = engine::QuantityKind::length, .length = engine::Length::from_nm(piece.length)},
        shown);
}

}  // namespace editor

#include "editor/node_bars.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "model/resolve/piece_subject.h"
#include "model/schedule/end_words.h"

namespace editor {

std::string_view node_bar_word(const model::Frame& frame, std::string_view name) {
    if (by_name(frame.diagonals, name) != nullptr) return NodeBarKind<model::Diagonal>::word;
    if (by_name(frame.leaning, name) != nullptr) return NodeBarKind<model::Leaning>::word;
    return {};
}

bool is_taken(const model::Frame& frame, std::string_view name) {
    return by_name(frame.members, name) != nullptr || !node_bar_word(frame, name).empty();
}

std::optional<model::Index> piece_of(const model::Project& project,
                                     const model::Resolved& resolved,
                                     const model::Subject& stated) {
    for (model::Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        if (!model::is_between_nodes(piece.kind) || piece.frame >= project.frames.size()) continue;
        if (model::piece_subject(project.frames[piece.frame], piece) == stated) return i;
    }
    return std::nullopt;
}

int fasteners_through(const model::Resolved& resolved, model::Index piece) {
    int count = 0;
    for (const auto& joint : resolved.joints) {
        const bool is_held_here =
            joint.pieces[0] == piece || joint.pieces[1] == piece || joint.brace == piece;
        if (is_held_here) count += static_cast<int>(joint.fastener_count);
    }
    return count;
}

std::string size_words(const model::Piece& piece, const engine::TapeStyle& shown) {
    const auto length = engine::Length::from_nm(piece.length);
    std::string words =
        quantity_text({.kind = engine::QuantityKind::length, .length = length}, shown) + " long";
    if (piece.kind != model::PieceKind::leaning) return words;
    const auto angle = [&](std::size_t end) {
        return model::saw_degrees_text(piece.ends[end].slope[0]) + "\xC2\xB0";
    };
    return words + ", cut " + angle(0) + " and " + angle(1);
}

}  // namespace editor

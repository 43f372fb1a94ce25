#include "editor/places/joined_lines.h"

#include "editor/places/piece_words.h"
#include "model/schedule/fastener_words.h"
#include "model/schedule/piece_words.h"

#include <algorithm>

namespace editor {
namespace {

using model::Index;

void add_piece(JoinedLine& line, Index piece) {
    if (piece == model::no_index) return;
    if (std::ranges::find(line.pieces, piece) == line.pieces.end()) line.pieces.push_back(piece);
}

// The two, a brace on them, a shim between: all that the fasteners go through.
void add_pieces(JoinedLine& line, const model::Joint& joint, const model::Resolved& resolved) {
    for (const Index piece : joint.pieces) add_piece(line, piece);
    add_piece(line, joint.shim);
    for (const auto& fastener : resolved.fasteners_of(joint)) {
        for (std::size_t i = 0; i < fastener.stack_count; ++i)
            add_piece(line, fastener.stack[i].piece);
    }
}

void add_label(std::string& words, const std::string& label) {
    if (words.find(label) != std::string::npos) return;
    words += (words.empty() ? "" : "; ") + label;
}

JoinedLine line_of(Index index,
                   const Derived& derived,
                   const model::FastenersInUse& in_use,
                   const model::PieceWords& words) {
    const auto& resolved = derived.resolved;
    const auto& joint = resolved.joints[index];
    JoinedLine line;
    line.joint = index;
    line.count = joint.fastener_count;
    line.wanted = joint.wanted;
    add_pieces(line, joint, resolved);
    for (Index i = 0; i < joint.fastener_count; ++i)
        add_label(line.fastener, in_use.label_of(joint.first_fastener + i));
    if (joint.fastener_count > 0) {
        line.stack = engine::Length::from_nm(resolved.fasteners[joint.first_fastener].grip);
    }
    for (const Index piece : line.pieces) {
        const std::string between = line.marks.empty() ? "" : " + ";
        line.marks += between + mark_text(derived, piece);
        line.members += between + words.member(piece);
    }
    return line;
}

}  // namespace

std::vector<JoinedLine> joined_lines(const Derived& derived, const model::Catalogue& catalogue) {
    const model::FastenersInUse in_use{catalogue, derived.resolved};
    const model::PieceWords words{*derived.project, catalogue, derived.resolved};
    std::vector<JoinedLine> lines;
    for (Index i = 0; i < derived.resolved.joints.size(); ++i) {
        const auto& joint = derived.resolved.joints[i];
        if (joint.fastener_count == 0 && joint.wanted == 0) continue;
        lines.push_back(line_of(i, derived, in_use, words));
    }
    return lines;
}

const std::vector<JoinedLine>& joined_lines(JoinedMemo& memo,
                                            const Derived& derived,
                                            const model::Catalogue& catalogue) {
    if (memo.revision != derived.revision)
        memo = {derived.revision, joined_lines(derived, catalogue)};
    return memo.lines;
}

}  // namespace editor

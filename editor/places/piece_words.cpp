#include "editor/places/piece_words.h"

#include "model/schedule/piece_words.h"
#include "model/schedule/tables.h"

namespace editor {
namespace {

using model::Index;

// How many pieces the member was split into.
Index parts_of(const Derived& derived, const model::Piece& piece) {
    Index parts = 0;
    for (const auto& other : derived.resolved.pieces) {
        if (other.frame == piece.frame && other.member == piece.member) ++parts;
    }
    return parts;
}

}  // namespace

std::string mark_text(const Derived& derived, Index piece) {
    const Index mark = derived.resolved.pieces[piece].mark;
    return mark < derived.resolved.marks.size() ? derived.resolved.marks[mark].name : "";
}

std::string hand_words(model::Hand hand) {
    switch (hand) {
        case model::Hand::none:
            return "";
        case model::Hand::as_drawn:
            return "as drawn";
        case model::Hand::opposite:
            return "opposite";
    }
    return "";
}

std::string member_words(const Derived& derived, Index piece) {
    const auto& it = derived.resolved.pieces[piece];
    if (it.member == model::no_index) return model::part_words(*derived.project, it);
    const auto& frame = derived.project->frames[it.frame];
    if (it.member >= frame.members.size()) return "";
    std::string words = frame.members[it.member].name;
    if (parts_of(derived, it) > 1) words += ", part " + std::to_string(it.part + 1);
    return words;
}

std::string piece_words(const Derived& derived, Index piece) {
    const auto& it = derived.resolved.pieces[piece];
    std::string words = mark_text(derived, piece);
    if (it.hand == model::Hand::opposite) words += " opposite hand";
    words += "   " + member_words(derived, piece) + "   ";
    return words + model::length_text(*derived.project, engine::Length::from_nm(it.length));
}

}  // namespace editor

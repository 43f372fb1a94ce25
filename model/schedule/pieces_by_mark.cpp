#include "model/schedule/pieces_by_mark.h"

#include <array>
#include <cstddef>

namespace model {

std::vector<MarkGroup> pieces_by_mark(const Resolved& resolved) {
    std::vector<MarkGroup> slots(resolved.marks.size() * 2);
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        if (piece.mark >= resolved.marks.size()) continue;
        auto& slot = slots[std::size_t{2} * piece.mark + (piece.hand == Hand::opposite ? 1 : 0)];
        if (slot.pieces.empty()) slot = {.mark = piece.mark, .hand = piece.hand};
        slot.pieces.push_back(i);
    }
    std::erase_if(slots, [](const MarkGroup& slot) { return slot.pieces.empty(); });
    return slots;
}

std::string_view name_of(Hand hand) {
    constexpr std::array<std::string_view, 3> names{"", "as drawn", "opposite"};
    return names[static_cast<std::size_t>(hand)];
}

std::string mark_on_drawing(const Resolved& resolved, const Piece& piece) {
    if (piece.mark >= resolved.marks.size()) return {};
    const auto& name = resolved.marks[piece.mark].name;
    return piece.hand == Hand::opposite ? name + " opp." : name;
}

}  // namespace model

#include "model/assembly/shut_in.h"

#include <utility>

namespace model {

ShuttingIn::ShuttingIn(const FrameParts& parts,
                       const PartWays& ways,
                       const ToolAccess& access,
                       const TakenApart& taken)
    : parts_{parts}, ways_{ways}, access_{access}, loose_(parts.size()) {
    note_loose(taken.puts);
}

void ShuttingIn::note_loose(const std::vector<Put>& puts) {
    for (const auto& put : puts) {
        if (put.part.kind <= PartKind::hung) {
            loose_ |= put.part.set;
        } else {
            note_loose(put.inside);
        }
    }
}

std::optional<ShutIn> ShuttingIn::part(const Part& part, const PieceSet& present) const {
    std::optional<PieceSet> least;
    for (std::size_t way = 0; way < ways_.count(); ++way) {
        PieceSet by(parts_.size());
        for (const Index i : part.pieces) by |= ways_.stops(way, i);
        by -= part.set;
        if (by.meets(present)) continue;
        by -= loose_;
        if (!least || by.size() < least->size()) least = std::move(by);
    }
    if (!least || least->size() == 0) return std::nullopt;
    return ShutIn{.pieces = part.pieces, .joints = {}, .by = least->list()};
}

std::optional<ShutIn> ShuttingIn::joint(Index joint) const {
    PieceSet by = access_.joints[joint].in_way_of_nose;
    by -= loose_;
    if (by.size() == 0) return std::nullopt;
    return ShutIn{.pieces = {}, .joints = {joint}, .by = by.list()};
}

}  // namespace model

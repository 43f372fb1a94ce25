#include "model/resolve/bar_room.h"

#include "model/resolve/bar_supply.h"

#include <algorithm>
#include <limits>

namespace model {

bool BarRoom::take(Index stock, Nm length) {
    Room& room = of(stock);
    if (length <= room.usual || room.usual == 0) return true;
    const auto shortest = room.longer.lower_bound(length);
    if (shortest == room.longer.end()) return false;
    if (--shortest->second == 0) room.longer.erase(shortest);
    return true;
}

BarRoom::Room& BarRoom::of(Index stock) {
    Room& room = by_stock_[stock];
    if (room.is_known) return room;
    room.is_known = true;
    const auto supply = bar_supply(project_, resolved_, project_.stock[stock]);
    const Nm trims = 2 * resolved_.shop.end_trim;
    Nm longest = 0;
    const auto note = [&](Nm bar, int left) {
        const Nm length = bar - trims;
        if (left <= 0 || length <= 0) return;
        longest = std::max(longest, length);
        if (left == std::numeric_limits<int>::max()) {
            room.usual = std::max(room.usual, length);
        } else {
            room.longer[length] += left;
        }
    };
    for (const auto& offer : supply.offers) note(offer.length, offer.left);
    // Where nothing comes without limit the longest offer counts as usual: the schedule of bars
    // says when they run out.
    if (room.usual == 0) room.usual = longest;
    for (const Nm bar : supply.at_home) note(bar, 1);
    for (const Nm offcut : supply.offcuts) note(offcut, 1);
    // What has come to the saw for a long piece is no reason to splice that piece.
    for (const auto& bar : project_.stock[stock].at_saw) {
        for (const auto& cut : bar.cuts) {
            const auto length = stated_length(project_, resolved_, cut.length);
            if (length && cut.state != CutState::spoiled) note(*length + trims, 1);
        }
    }
    if (room.usual == 0) room.usual = longest;
    room.longer.erase(room.longer.begin(), room.longer.upper_bound(room.usual));
    return room;
}

}  // namespace model

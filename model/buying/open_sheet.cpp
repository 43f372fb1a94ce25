#include "model/buying/open_sheet.h"

#include <algorithm>

namespace model {
namespace {

bool fits_in(const SheetSize& part, const SheetSize& room) {
    return part[0] <= room[0] && part[1] <= room[1];
}

SheetSize turned(const SheetSize& size) { return {size[1], size[0]}; }

}  // namespace

double area_of(const SheetSize& size) {
    return static_cast<double>(size[0]) * static_cast<double>(size[1]);
}

bool fits_on(const SheetSize& part, const SheetOffer& sheet) {
    return fits_in(part, sheet.size) || (sheet.may_turn && fits_in(turned(part), sheet.size));
}

OpenSheet::OpenSheet(const SheetOffer& offer, std::size_t index, engine::Nm kerf)
    : may_turn_{offer.may_turn}, kerf_{kerf} {
    packed_.offer = index;
    rooms_.push_back({{0, 0}, {offer.size[0] + kerf, offer.size[1] + kerf}});
}

RoomChoice OpenSheet::best_for(const SheetSize& part, PartFit fit) const {
    RoomChoice best;
    for (std::size_t i = 0; i < rooms_.size(); ++i) {
        consider(best, i, with_kerf(part), false, fit);
        if (may_turn_ && part[0] != part[1]) consider(best, i, with_kerf(turned(part)), true, fit);
    }
    return best;
}

void OpenSheet::put(std::size_t index,
                    const SheetSize& part,
                    const RoomChoice& choice,
                    RestSplit split) {
    const Room room = rooms_[choice.room];
    const SheetSize size = with_kerf(choice.is_turned ? turned(part) : part);
    rooms_.erase(rooms_.begin() + static_cast<std::ptrdiff_t>(choice.room));
    packed_.parts.push_back({.part = index, .at = room.at, .is_turned = choice.is_turned});
    const SheetSize rest{room.size[0] - size[0], room.size[1] - size[1]};
    const bool cuts_across = (rest[0] < rest[1]) == (split == RestSplit::shorter_rest);
    add_room({room.at[0] + size[0], room.at[1]}, {rest[0], cuts_across ? size[1] : room.size[1]});
    add_room({room.at[0], room.at[1] + size[1]}, {cuts_across ? room.size[0] : size[0], rest[1]});
}

void OpenSheet::consider(
    RoomChoice& best, std::size_t room, const SheetSize& part, bool is_turned, PartFit fit) const {
    const SheetSize& size = rooms_[room].size;
    if (!fits_in(part, size)) return;
    const auto rest = std::min(size[0] - part[0], size[1] - part[1]);
    const double waste =
        fit == PartFit::area ? area_of(size) - area_of(part) : static_cast<double>(rest);
    if (waste < best.waste) best = {room, is_turned, waste};
}

void OpenSheet::add_room(const SheetSize& at, const SheetSize& size) {
    if (size[0] > kerf_ && size[1] > kerf_) rooms_.push_back({at, size});
}

}  // namespace model

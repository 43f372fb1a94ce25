// A sheet that is being filled with parts, each cut free from edge to edge of what is still whole.
#pragma once

#include "model/buying/sheet_packing.h"

#include <cstddef>
#include <limits>
#include <vector>

namespace model {

using SheetSize = std::array<engine::Nm, 2>;

// Into which of the rooms a part goes: where least is left beside its shorter rest, or least area.
enum class PartFit { short_side, area };
// Along which rest the cut goes through.
enum class RestSplit { shorter_rest, longer_rest };

double area_of(const SheetSize& size);
bool fits_on(const SheetSize& part, const SheetOffer& sheet);

struct RoomChoice {
    std::size_t room = 0;
    bool is_turned = false;
    double waste = std::numeric_limits<double>::max();  // the less the better the part fits
    bool is_found() const { return waste < std::numeric_limits<double>::max(); }
};

class OpenSheet {
public:
    OpenSheet(const SheetOffer& offer, std::size_t index, engine::Nm kerf);

    RoomChoice best_for(const SheetSize& part, PartFit fit) const;
    void put(std::size_t index, const SheetSize& part, const RoomChoice& choice, RestSplit split);

    const PackedSheet& packed() const { return packed_; }

private:
    // A rectangle that is still whole. The kerf is counted with each part, to its right and above
    // it, and with the sheet itself: so it lies between parts, but takes nothing at the edge.
    struct Room {
        SheetSize at{};
        SheetSize size{};
    };

    SheetSize with_kerf(const SheetSize& part) const { return {part[0] + kerf_, part[1] + kerf_}; }
    void consider(RoomChoice& best,
                  std::size_t room,
                  const SheetSize& part,
                  bool is_turned,
                  PartFit fit) const;
    void add_room(const SheetSize& at, const SheetSize& size);

    bool may_turn_;
    engine::Nm kerf_;
    std::vector<Room> rooms_;
    PackedSheet packed_;
};

}  // namespace model

// Rectangles laid onto rectangles so that cuts from edge to edge part them.
#pragma once

#include "engine/geometry/box.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace model {

struct SheetOffer {
    std::array<engine::Nm, 2> size{};
    std::optional<std::int64_t> price;
    int left = 0;          // how many can be had
    bool may_turn = true;  // parts on it
    bool is_paid = false;  // costs nothing more, and is used before others
};

struct PackingTask {
    std::vector<std::array<engine::Nm, 2>> parts;
    std::vector<SheetOffer> sheets;
    engine::Nm kerf = 0;
};

struct PackedPart {
    std::size_t part = 0;
    std::array<engine::Nm, 2> at{};
    bool is_turned = false;
};

struct PackedSheet {
    std::size_t offer = 0;
    std::vector<PackedPart> parts;
};

struct Packing {
    std::vector<PackedSheet> sheets;
    std::vector<std::size_t> too_large;  // for every sheet
    std::vector<std::size_t> left_out;   // the sheets ran out
};

// Parts go largest first into the place that fits them best, what is left of the place is cut in
// two; tried by several orders and rules for each size of sheet (common practice of such layouts,
// from memory). The first of those that leave least out and cost least, prices being those of the
// sheets if all have one, else their areas. The same task gives the same packing.
Packing packing_of(const PackingTask& task);

}  // namespace model

// What is left to nest: items for bars, as the solver sees them. A branch of its search is such a
// task again, with some bars done, some items tied together and others kept apart.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace engine::cutting {

// Something that goes into one bar as a whole: a piece, or several that a branch has tied together.
struct Item {
    std::int64_t weight = 0;   // its pieces and one kerf for each
    std::int64_t longest = 0;  // the longest piece in it
    int demand = 0;
    std::vector<int> kinds;  // of its pieces, with repetitions, ascending
    std::vector<int>
        apart;  // places of items that may not be in one bar with it; its own: one a bar

    bool operator==(const Item&) const = default;
};

struct Bar {
    std::int64_t capacity = 0;  // its length without trims, and one kerf
    std::int64_t hold =
        0;  // a longest piece shorter than this lowers the capacity by the difference
    std::int64_t price = 0;
    std::int64_t bought = 0;  // its length, or 0 if it is on hand
    int supply = 0;           // never more than there are pieces
};

struct Task {
    std::vector<Item> items;  // the heaviest first
    std::vector<Bar> bars;
};

struct Part {
    int item = 0;
    int count = 0;

    bool operator==(const Part&) const = default;
    auto operator<=>(const Part&) const = default;
};

// The contents of one bar.
struct Pattern {
    int bar = 0;
    std::vector<Part> parts;  // by item, ascending

    bool operator==(const Pattern&) const = default;
    auto operator<=>(const Pattern&) const = default;
};

// Three items, by place, ascending.
using Triple = std::array<int, 3>;

// The same, `times` over.
struct Filled {
    Pattern pattern;
    int times = 0;
};
using Packing = std::vector<Filled>;

// What a bar offers to items of which the longest piece is so long.
inline std::int64_t room(const Bar& bar, std::int64_t longest) {
    return longest >= bar.hold ? bar.capacity : bar.capacity - (bar.hold - longest);
}

std::int64_t weight(const Task& task, const std::vector<Part>& parts);
bool fits(const Task& task, const Pattern& pattern);
std::int64_t wanted_weight(const Task& task);  // of all items together
bool is_done(const Task& task);

// Takes packed items and their bars off the task. Gives what was taken: less of items of which
// there were too many.
Packing take_off(Task& task, const Filled& filled);

// With items as pieces: each part becomes its pieces' kinds.
Pattern in_kinds(const Task& task, const Pattern& pattern);
Packing in_kinds(const Task& task, const Packing& packing);

// The other way round, where each item is one piece.
Packing in_items(const Task& task, const Packing& packing);

}  // namespace engine::cutting

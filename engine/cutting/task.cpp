#include "engine/cutting/task.h"

#include <algorithm>
#include <map>

namespace engine::cutting {

std::int64_t weight(const Task& task, const std::vector<Part>& parts) {
    std::int64_t sum = 0;
    for (const Part& part : parts)
        sum += task.items[static_cast<std::size_t>(part.item)].weight * part.count;
    return sum;
}

bool fits(const Task& task, const Pattern& pattern) {
    std::int64_t longest = 0;
    for (const Part& part : pattern.parts)
        longest = std::max(longest, task.items[static_cast<std::size_t>(part.item)].longest);
    return weight(task, pattern.parts) <=
           room(task.bars[static_cast<std::size_t>(pattern.bar)], longest);
}

std::int64_t wanted_weight(const Task& task) {
    std::int64_t sum = 0;
    for (const Item& item : task.items) sum += item.weight * item.demand;
    return sum;
}

bool is_done(const Task& task) {
    return std::all_of(task.items.begin(), task.items.end(), [](const Item& item) {
        return item.demand == 0;
    });
}

void take_off(Task& task, Filled& filled) {
    for (Part& part : filled.pattern.parts) {
        int& demand = task.items[static_cast<std::size_t>(part.item)].demand;
        part.count = std::min(part.count, demand / filled.times);
        demand -= part.count * filled.times;
    }
    std::erase_if(filled.pattern.parts, [](const Part& part) { return part.count == 0; });
    task.bars[static_cast<std::size_t>(filled.pattern.bar)].supply -= filled.times;
}

Pattern in_kinds(const Task& task, const Pattern& pattern) {
    std::map<int, int> counts;
    for (const Part& part : pattern.parts) {
        for (const int kind : task.items[static_cast<std::size_t>(part.item)].kinds)
            counts[kind] += part.count;
    }
    Pattern kinds{.bar = pattern.bar, .parts = {}};
    for (const auto& [kind, count] : counts) kinds.parts.push_back({kind, count});
    return kinds;
}

Packing in_kinds(const Task& task, const Packing& packing) {
    Packing kinds;
    for (const Filled& filled : packing)
        kinds.push_back({in_kinds(task, filled.pattern), filled.times});
    return kinds;
}

}  // namespace engine::cutting

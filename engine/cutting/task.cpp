#include "engine/cutting/task.h"

#include <algorithm>
#include <map>

namespace engine::cutting {

namespace {

// As many of the bars as can be alike.
Filled taken_alike(Task& task, Filled filled) {
    const auto demand = [&task](const Part& part) -> int& {
        return task.items[static_cast<std::size_t>(part.item)].demand;
    };
    for (Part& part : filled.pattern.parts) part.count = std::min(part.count, demand(part));
    std::erase_if(filled.pattern.parts, [](const Part& part) { return part.count == 0; });
    for (const Part& part : filled.pattern.parts)
        filled.times = std::min(filled.times, demand(part) / part.count);
    for (const Part& part : filled.pattern.parts) demand(part) -= part.count * filled.times;
    return filled;
}

}  // namespace

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
    return std::all_of(task.items.begin(), task.items.end(),
                       [](const Item& item) { return item.demand == 0; });
}

Packing take_off(Task& task, const Filled& filled) {
    Packing taken;
    for (int left = filled.times; left > 0; left -= taken.back().times)
        taken.push_back(taken_alike(task, {filled.pattern, left}));
    task.bars[static_cast<std::size_t>(filled.pattern.bar)].supply -= filled.times;
    return taken;
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

Packing in_items(const Task& task, const Packing& packing) {
    std::map<int, int> item_of_kind;
    for (std::size_t i = 0; i < task.items.size(); ++i)
        item_of_kind[task.items[i].kinds.front()] = static_cast<int>(i);
    Packing result;
    for (Filled filled : packing) {
        for (Part& part : filled.pattern.parts) part.item = item_of_kind.at(part.item);
        std::sort(filled.pattern.parts.begin(), filled.pattern.parts.end());
        result.push_back(std::move(filled));
    }
    return result;
}

}  // namespace engine::cutting

#include "engine/cutting/reduced_task.h"

#include <algorithm>
#include <numeric>

namespace engine::cutting {

namespace {

// The items of `order`, a list of places, in that order.
Moved picked(const Task& task, const std::vector<int>& order) {
    Moved result{{.items = {}, .bars = task.bars}, std::vector<int>(task.items.size(), -1)};
    for (std::size_t i = 0; i < order.size(); ++i)
        result.place[static_cast<std::size_t>(order[i])] = static_cast<int>(i);
    for (const int old : order) {
        Item item = task.items[static_cast<std::size_t>(old)];
        std::vector<int> apart;
        for (const int other : item.apart) {
            const int now = result.place[static_cast<std::size_t>(other)];
            if (now >= 0) apart.push_back(now);
        }
        item.apart = std::move(apart);
        result.task.items.push_back(std::move(item));
    }
    return result;
}

std::vector<int> wanted_places(const Task& task) {
    std::vector<int> places;
    for (std::size_t i = 0; i < task.items.size(); ++i) {
        if (task.items[i].demand > 0) places.push_back(static_cast<int>(i));
    }
    return places;
}

}  // namespace

Moved without_done_items(const Task& task) { return picked(task, wanted_places(task)); }

Moved reordered(const Task& task) {
    std::vector<int> places = wanted_places(task);
    std::stable_sort(places.begin(), places.end(), [&](int a, int b) {
        return task.items[static_cast<std::size_t>(a)].weight >
               task.items[static_cast<std::size_t>(b)].weight;
    });
    return picked(task, places);
}

Pattern moved(const Moved& to, const Pattern& pattern) {
    Pattern result{pattern.bar, {}};
    for (const Part& part : pattern.parts) {
        const int now = to.place[static_cast<std::size_t>(part.item)];
        if (now < 0) continue;
        const int most = to.task.items[static_cast<std::size_t>(now)].demand;
        result.parts.push_back({now, std::min(part.count, most)});
    }
    std::sort(result.parts.begin(), result.parts.end());
    return result;
}

std::vector<Pattern> moved(const Moved& to, const std::vector<Pattern>& patterns) {
    std::vector<Pattern> result;
    for (const Pattern& pattern : patterns) {
        if (to.task.bars[static_cast<std::size_t>(pattern.bar)].supply > 0)
            result.push_back(moved(to, pattern));
    }
    return result;
}

}  // namespace engine::cutting

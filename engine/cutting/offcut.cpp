#include "engine/cutting/offcut.h"

#include "engine/cutting/fill.h"

#include <algorithm>

namespace engine::cutting {

namespace {

constexpr int tries = 6;

std::int64_t free_room(const Task& task, const Pattern& pattern) {
    return task.bars[static_cast<std::size_t>(pattern.bar)].capacity - weight(task, pattern.parts);
}

// One bar of the kind is shorter by `offcut`, as the last bar of the task: what is behind its
// pieces helps the vice.
Task with_short_bar(const Task& task, std::size_t bar, std::int64_t offcut) {
    Task shorter = task;
    Bar last = task.bars[bar];
    last.capacity -= offcut;
    last.hold -= offcut;
    last.supply = 1;
    --shorter.bars[bar].supply;
    shorter.bars.push_back(last);
    return shorter;
}

class Offcuts {
public:
    Offcuts(const Task& task, Packing packing, std::int64_t steps, Effort& effort)
        : task_{task}, packing_{std::move(packing)}, end_{effort.done() + steps}, effort_{effort} {}

    Packing run() {
        for (std::size_t bar = 0; bar < task_.bars.size(); ++bar) {
            if (task_.bars[bar].supply > 0) lengthen(bar);
        }
        return packing_;
    }

private:
    bool is_over() const { return effort_.is_over() || effort_.done() >= end_; }

    // All that is free in all bars would be the most; halves the way to it.
    void lengthen(std::size_t bar) {
        std::int64_t room = -wanted_weight(task_);
        for (const Bar& each : task_.bars) room += each.capacity * each.supply;
        std::int64_t most = std::min(room, task_.bars[bar].capacity);
        std::int64_t least = longest_free(task_, packing_);
        while (most > least && !is_over()) {
            const std::int64_t wanted = most - (most - least) / 2;
            if (!pack(bar, wanted)) most = wanted - 1;
            least = std::max(longest_free(task_, packing_), least);
        }
    }

    bool pack(std::size_t bar, std::int64_t offcut) {
        const Task shorter = with_short_bar(task_, bar, offcut);
        auto packing = filled(shorter, tries, effort_);
        if (!packing) return false;
        for (Filled& filled : *packing) {
            if (static_cast<std::size_t>(filled.pattern.bar) == task_.bars.size())
                filled.pattern.bar = static_cast<int>(bar);
        }
        if (longest_free(task_, *packing) < offcut) return false;  // that bar is not cut at all
        packing_ = std::move(*packing);
        return true;
    }

    const Task& task_;
    Packing packing_;
    std::int64_t end_;
    Effort& effort_;
};

}  // namespace

std::int64_t longest_free(const Task& task, const Packing& packing) {
    std::int64_t longest = 0;
    for (const Filled& filled : packing) {
        if (!filled.pattern.parts.empty())
            longest = std::max(longest, free_room(task, filled.pattern));
    }
    return longest;
}

Packing with_longer_offcut(const Task& task, Packing packing, std::int64_t steps, Effort& effort) {
    return Offcuts(task, std::move(packing), steps, effort).run();
}

}  // namespace engine::cutting

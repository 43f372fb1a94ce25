#include "engine/cutting/layouts.h"

#include "engine/cutting/best_fill.h"
#include "engine/cutting/layout_swap.h"
#include "engine/cutting/wide.h"

#include <algorithm>
#include <map>

namespace engine::cutting {

namespace {

// How much more than its share of what is free a layout may leave, in quarters.
constexpr std::int64_t slack_quarters[] = {4, 6, 5, 8, 3, 2, 12, 0, 16, 1, 10, 7};

// Layouts that can be repeated often, one after the other.
class Repeats {
public:
    Repeats(const Task& task, std::int64_t quarters)
        : task_{task}, quarters_{quarters}, best_fill_{task} {
        for (const Item& item : task.items) left_.push_back(item.demand);
        for (const Bar& bar : task.bars) {
            bars_.push_back(bar.supply);
            room_ += bar.supply * bar.capacity;
            count_ += bar.supply;
        }
        room_ -= wanted_weight(task);
    }

    // Nothing where it took more bars than there are, or more layouts than `most`.
    bool run(std::size_t most) {
        while (std::any_of(left_.begin(), left_.end(), [](int n) { return n > 0; })) {
            const Filled next = most_repeated();
            if (next.times == 0 || packing.size() >= most) return false;
            take(next);
            if (room_ < 0) return false;
        }
        return true;
    }

    std::int64_t nodes() const { return best_fill_.nodes(); }

    Packing packing;

private:
    Filled most_repeated() {
        const int most = *std::max_element(bars_.begin(), bars_.end());
        const auto slack = static_cast<std::int64_t>(
            count_ > 0 ? Wide{room_} * quarters_ / 4 / Wide{count_} : Wide{0});
        Filled last;
        for (int times = most; times > 0; times = times > 16 ? times - times / 16 : times - 1) {
            for (std::size_t b = 0; b < bars_.size(); ++b) {
                if (bars_[b] < times) continue;
                const Filled filled{{static_cast<int>(b), parts(static_cast<int>(b), times, slack)},
                                    times};
                if (filled.pattern.parts.empty()) continue;
                const std::int64_t free =
                    task_.bars[b].capacity - weight(task_, filled.pattern.parts);
                last = filled;
                if (free <= slack) return repeated(filled);
            }
        }
        return last.times == 0 ? last : repeated(last);
    }

    std::vector<Part> parts(int bar, int times, std::int64_t slack) {
        std::vector<int> available = left_;
        for (int& n : available) n /= times;
        return best_fill_.parts(available, bar, std::max<std::int64_t>(0, slack / 4));
    }

    // As often as pieces and bars allow.
    Filled repeated(Filled filled) const {
        filled.times = bars_[static_cast<std::size_t>(filled.pattern.bar)];
        for (const Part& part : filled.pattern.parts)
            filled.times =
                std::min(filled.times, left_[static_cast<std::size_t>(part.item)] / part.count);
        return filled;
    }

    void take(const Filled& filled) {
        const auto bar = static_cast<std::size_t>(filled.pattern.bar);
        for (const Part& part : filled.pattern.parts)
            left_[static_cast<std::size_t>(part.item)] -= part.count * filled.times;
        bars_[bar] -= filled.times;
        count_ -= filled.times;
        room_ -= filled.times * (task_.bars[bar].capacity - weight(task_, filled.pattern.parts));
        packing.push_back(filled);
    }

    const Task& task_;
    std::int64_t quarters_;
    BestFill best_fill_;
    std::vector<int> left_;
    std::vector<int> bars_;
    std::int64_t room_ = 0;   // that no item needs, of the bars left
    std::int64_t count_ = 0;  // of the bars left
};

// The task of just the bars that are used.
Task with_bars_of(const Task& task, const Packing& packing) {
    Task same = task;
    for (Bar& bar : same.bars) bar.supply = 0;
    for (const Filled& filled : packing)
        same.bars[static_cast<std::size_t>(filled.pattern.bar)].supply += filled.times;
    return same;
}

}  // namespace

Packing merged(const Packing& packing) {
    std::map<Pattern, int> times;
    for (const Filled& filled : packing) {
        if (!filled.pattern.parts.empty()) times[filled.pattern] += filled.times;
    }
    Packing result;
    for (const auto& [pattern, count] : times) result.push_back({pattern, count});
    return result;
}

Packing with_fewer_layouts(const Task& task, Packing packing, std::int64_t steps, Effort& effort) {
    const Task same = with_bars_of(task, packing);
    const std::int64_t end = effort.done() + steps;
    packing = swapped(same, merged(packing), end, effort);
    for (const std::int64_t quarters : slack_quarters) {
        if (effort.is_over() || effort.done() >= end || packing.size() <= 1) break;
        Repeats repeats(same, quarters);
        const bool is_done = repeats.run(packing.size() + 1);
        effort.spend(repeats.nodes() * 10);
        if (!is_done) continue;
        Packing other = swapped(same, merged(repeats.packing), end, effort);
        if (other.size() < packing.size()) packing = std::move(other);
    }
    return packing;
}

}  // namespace engine::cutting

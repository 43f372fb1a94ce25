#include "engine/cutting/fill.h"

#include "engine/cutting/best_fill.h"
#include "engine/cutting/count_vectors.h"
#include "engine/cutting/draw.h"
#include "engine/cutting/first_fit.h"
#include "engine/cutting/wide.h"

#include <algorithm>

namespace engine::cutting {

namespace {

// One pass over bars in a given order.
class Pass {
public:
    explicit Pass(const Task& task) : task_{task}, best_fill_{task} {
        for (const Item& item : task.items) left_.push_back(item.demand);
        left_weight_ = wanted_weight(task);
    }

    bool is_done() const { return left_weight_ == 0; }
    std::int64_t left_weight() const { return left_weight_; }
    std::int64_t nodes() const { return best_fill_.nodes(); }

    // Fills up to `most` such bars alike, as long as the pieces last. 0: nothing fits.
    int fill(int bar, std::int64_t slack, int most) {
        Filled filled{{bar, best_fill_.parts(left_, bar, slack)}, most};
        if (filled.pattern.parts.empty()) return 0;
        for (const Part& part : filled.pattern.parts)
            filled.times = std::min(filled.times, left_[at(part)] / part.count);
        for (const Part& part : filled.pattern.parts) left_[at(part)] -= part.count * filled.times;
        left_weight_ -= weight(task_, filled.pattern.parts) * filled.times;
        packing.push_back(filled);
        return filled.times;
    }

    Packing packing;

private:
    static std::size_t at(const Part& part) { return static_cast<std::size_t>(part.item); }

    const Task& task_;
    BestFill best_fill_;
    std::vector<int> left_;
    std::int64_t left_weight_ = 0;
};

std::vector<int> all_bars(const Task& task) {
    std::vector<int> bars;
    for (std::size_t b = 0; b < task.bars.size(); ++b)
        bars.insert(bars.end(), static_cast<std::size_t>(std::max(0, task.bars[b].supply)),
                    static_cast<int>(b));
    return bars;
}

// Small ones first where `draw` is not to shuffle: what is left for the last bars is easier to
// place.
std::vector<int> in_order(const Task& task, std::vector<int> bars, int attempt, Draw& draw) {
    if (attempt > 1)
        draw.shuffle(bars);
    else {
        std::stable_sort(bars.begin(), bars.end(), [&](int a, int b) {
            const std::int64_t first = task.bars[static_cast<std::size_t>(a)].capacity;
            const std::int64_t second = task.bars[static_cast<std::size_t>(b)].capacity;
            return attempt == 0 ? first < second : first > second;
        });
    }
    return bars;
}

constexpr std::int64_t slack_shares[] = {0, 2, 4, 1, 3, 6};  // halves of an even share

// All of `bars` in turn, each allowed a share of what is free in all of them together.
bool fill_in_turn(
    Pass& pass, const Task& task, const std::vector<int>& bars, int attempt, Effort& effort) {
    std::int64_t room_left = 0;
    for (const int bar : bars) room_left += task.bars[static_cast<std::size_t>(bar)].capacity;
    const std::int64_t share =
        slack_shares[static_cast<std::size_t>(attempt) % std::size(slack_shares)];
    for (std::size_t i = 0; i < bars.size() && !pass.is_done();) {
        if (room_left < pass.left_weight() || effort.is_over()) return false;
        const std::int64_t nodes = pass.nodes();
        int alike = 1;
        while (i + static_cast<std::size_t>(alike) < bars.size() &&
               bars[i + static_cast<std::size_t>(alike)] == bars[i])
            ++alike;
        const Wide over = Wide{room_left - pass.left_weight()} * share / 2;
        const auto slack = static_cast<std::int64_t>(over / static_cast<Wide>(bars.size() - i));
        const int used = std::max(1, pass.fill(bars[i], slack, alike));
        room_left -= used * task.bars[static_cast<std::size_t>(bars[i])].capacity;
        i += static_cast<std::size_t>(used);
        effort.spend((pass.nodes() - nodes) * 10 + 50);
    }
    return pass.is_done();
}

}  // namespace

std::optional<Packing> filled(const Task& task, int tries, Effort& effort) {
    Draw draw{2};
    const std::vector<int> bars = all_bars(task);
    for (int attempt = 0; attempt < tries && !effort.is_over(); ++attempt) {
        Pass pass(task);
        const std::vector<int> order = in_order(task, bars, attempt, draw);
        effort.spend(static_cast<std::int64_t>(order.size()) * 10);
        if (fill_in_turn(pass, task, order, attempt, effort)) return std::move(pass.packing);
    }
    return std::nullopt;
}

std::optional<Packing> filled_greedily(const Task& task, Effort& effort) {
    Pass pass(task);
    for (const int bar : bars_by_worth(task)) {
        int supply = task.bars[static_cast<std::size_t>(bar)].supply;
        while (supply > 0 && !pass.is_done()) {
            const int used = pass.fill(bar, 0, supply);
            if (used == 0) break;
            supply -= used;
        }
    }
    effort.spend(pass.nodes() * 10);
    if (!pass.is_done()) return std::nullopt;
    return std::move(pass.packing);
}

}  // namespace engine::cutting

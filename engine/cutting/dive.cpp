#include "engine/cutting/dive.h"

#include "engine/cutting/fill.h"
#include "engine/cutting/reduced_task.h"

#include <algorithm>
#include <cmath>

namespace engine::cutting {

namespace {

constexpr double nearly = 1e-3;
constexpr double almost_sure = 0.9;  // taken together with the surest

Packing whole_bars(const Relaxed& relaxed) {
    Packing whole;
    for (std::size_t p = 0; p < relaxed.patterns.size(); ++p) {
        const int times = static_cast<int>(std::floor(relaxed.amounts[p] + nearly));
        if (times > 0) whole.push_back({relaxed.patterns[p], times});
    }
    return whole;
}

// The surest first; of equals the fullest.
std::vector<std::size_t> by_amount(const Task& task, const Relaxed& relaxed) {
    std::vector<std::size_t> order;
    for (std::size_t p = 0; p < relaxed.patterns.size(); ++p) {
        if (relaxed.amounts[p] > nearly) order.push_back(p);
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const double gap = relaxed.amounts[a] - relaxed.amounts[b];
        if (std::abs(gap) > 1e-6) return gap > 0;
        return weight(task, relaxed.patterns[a].parts) > weight(task, relaxed.patterns[b].parts);
    });
    return order;
}

}  // namespace

std::vector<double> prices_by_room(const Task& task) {
    std::vector<double> prices;
    for (const Bar& bar : task.bars)
        prices.push_back(static_cast<double>(std::max<std::int64_t>(bar.capacity, 0)));
    return prices;
}

std::optional<Packing> Dive::packing(const Task& task, const Relaxed& relaxed, Freedom freedom) {
    packed_.clear();
    if (!go(task, relaxed, freedom)) return std::nullopt;
    return packed_;
}

bool Dive::go(const Task& task, const Relaxed& relaxed, Freedom freedom) {
    Packing whole = whole_bars(relaxed);
    if (!whole.empty()) return take(task, relaxed, std::move(whole), freedom);
    const std::vector<std::size_t> order = by_amount(task, relaxed);
    const int choices = freedom.depth > 0 ? freedom.others : 0;
    for (int c = 0; c <= choices && static_cast<std::size_t>(c) < order.size(); ++c) {
        if (is_over()) return false;
        Packing chosen;
        for (std::size_t at = static_cast<std::size_t>(c); at < order.size(); ++at) {
            if (!chosen.empty() && relaxed.amounts[order[at]] < almost_sure) break;
            chosen.push_back({relaxed.patterns[order[at]], 1});
        }
        if (take(task, relaxed, chosen, {freedom.others - c, freedom.depth - 1})) return true;
    }
    return false;
}

bool Dive::take(const Task& task, const Relaxed& relaxed, Packing chosen, Freedom freedom) {
    const std::size_t before = packed_.size();
    Task rest = task;
    for (Filled& filled : chosen) {
        const int supply = rest.bars[static_cast<std::size_t>(filled.pattern.bar)].supply;
        filled.times = std::min(filled.times, supply);
        if (filled.times <= 0) continue;
        for (const Filled& taken : in_kinds(task, take_off(rest, filled))) packed_.push_back(taken);
    }
    if (finish(rest, relaxed.patterns, freedom)) return true;
    packed_.resize(before);
    return false;
}

bool Dive::finish(const Task& task, const std::vector<Pattern>& patterns, Freedom freedom) {
    const Moved rest = without_done_items(task);
    if (rest.task.items.empty()) return true;
    if (const auto quick = filled(rest.task, 4, effort_)) {
        const Packing last = in_kinds(rest.task, *quick);
        packed_.insert(packed_.end(), last.begin(), last.end());
        return true;
    }
    if (is_over()) return false;
    const Relaxed relaxed =
        relax(rest.task,
              {.prices = prices_by_room(rest.task),
               .patterns = moved(rest, patterns),
               .is_enough = [&](const Need& need) { return is_short(rest.task, need); },
               .care = care_},
              effort_);
    return relaxed.is_solved && go(rest.task, relaxed, freedom);
}

}  // namespace engine::cutting

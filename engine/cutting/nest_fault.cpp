#include "engine/cutting/nest.h"

#include <algorithm>
#include <map>
#include <string>

namespace engine {

namespace {

std::string layout_place(std::size_t place) { return "layout " + std::to_string(place + 1); }

struct Cuts {
    std::int64_t weight = 0;  // with a kerf each
    std::int64_t longest = 0;
};

Cuts sum(const NestProblem& problem, const NestLayout& layout) {
    Cuts cuts;
    for (const NestCount& cut : layout.cuts) {
        const std::int64_t length = problem.pieces[cut.piece].length;
        cuts.weight += (length + problem.kerf) * cut.count;
        cuts.longest = std::max(cuts.longest, length);
    }
    return cuts;
}

bool has_places(const NestProblem& problem, const NestLayout& layout) {
    return layout.stock < problem.stock.size() && layout.bars > 0 && !layout.cuts.empty() &&
           std::all_of(layout.cuts.begin(), layout.cuts.end(), [&](const NestCount& cut) {
               return cut.piece < problem.pieces.size() && cut.count > 0;
           });
}

std::optional<std::string> fault_of_layout(const NestProblem& problem,
                                           const NestLayout& layout,
                                           const std::string& place) {
    if (!has_places(problem, layout)) return place + " has bars or cuts that do not exist";
    const NestStock& stock = problem.stock[layout.stock];
    const Cuts cuts = sum(problem, layout);
    const std::int64_t free = stock.length - stock.trim_start - cuts.weight;  // up to the far end
    if (free - stock.trim_end + problem.kerf < 0) return place + " takes more than its bar has";
    if (free + problem.kerf + cuts.longest < problem.least_held)
        return place + " leaves less than the vice can hold";
    if (layout.offcut != std::max<std::int64_t>(0, free - stock.trim_end))
        return place + " tells another offcut than is left";
    return std::nullopt;
}

std::optional<std::string> fault_of_counts(const NestProblem& problem, const NestPlan& plan) {
    std::map<std::size_t, std::int64_t> pieces;
    std::map<std::size_t, std::int64_t> bars;
    for (const NestLayout& layout : plan.layouts) {
        bars[layout.stock] += layout.bars;
        for (const NestCount& cut : layout.cuts) pieces[cut.piece] += cut.count * layout.bars;
    }
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
        if (pieces[p] != problem.pieces[p].quantity)
            return "piece " + std::to_string(p + 1) + " is cut " + std::to_string(pieces[p]) +
                   " times";
    }
    for (std::size_t s = 0; s < problem.stock.size(); ++s) {
        if (problem.stock[s].supply && bars[s] > *problem.stock[s].supply)
            return "stock " + std::to_string(s + 1) + " is used " + std::to_string(bars[s]) +
                   " times";
    }
    return std::nullopt;
}

std::optional<std::string> fault_of_sums(const NestProblem& problem, const NestPlan& plan) {
    std::int64_t cost = 0;
    std::int64_t bought = 0;
    std::int64_t offcut = 0;
    for (const NestLayout& layout : plan.layouts) {
        const NestStock& stock = problem.stock[layout.stock];
        cost += stock.price * layout.bars;
        if (!stock.is_remnant && stock.price > 0) bought += stock.length * layout.bars;
        offcut = std::max(offcut, layout.offcut);
    }
    if (cost != plan.cost) return "the cost is not the sum of the bars' prices";
    if (bought != plan.bought_length) return "the bought length is not the sum of the bars'";
    if (offcut != plan.longest_offcut) return "the longest offcut is another";
    return std::nullopt;
}

}  // namespace

std::optional<std::string> fault(const NestProblem& problem, const NestPlan& plan) {
    for (std::size_t l = 0; l < plan.layouts.size(); ++l) {
        if (auto found = fault_of_layout(problem, plan.layouts[l], layout_place(l))) return found;
    }
    if (auto found = fault_of_counts(problem, plan)) return found;
    return fault_of_sums(problem, plan);
}

}  // namespace engine

// A stock's bars nested at the least cost that can be proven.
#include "engine/cutting/nest_grid.h"
#include "model/schedule/bar_stock.h"
#include "model/schedule/spare_home_bars.h"

#include <algorithm>
#include <limits>

namespace model {
namespace {

// No saw holds less (common practice), and a finer grid would only cost time.
constexpr Nm saw_step = engine::Length::nm_per_mm / 10;

// Pieces of one length, in the order in which they are to be cut: one mark after another, both of
// its hands at one setting of the stop.
struct Lengths {
    std::vector<Nm> length;
    std::vector<std::vector<Index>> pieces;
};

Lengths lengths_of(const Resolved& resolved, const std::vector<Index>& pieces) {
    Lengths all;
    for (const Index piece : pieces) {
        const Nm length = resolved.pieces[piece].length;
        if (all.length.empty() || all.length.back() != length) {
            all.length.push_back(length);
            all.pieces.emplace_back();
        }
        all.pieces.back().push_back(piece);
    }
    for (auto& alike : all.pieces) {
        std::ranges::stable_sort(alike, {}, [&](Index i) { return resolved.pieces[i].mark; });
        std::ranges::reverse(alike);  // the next to be cut is taken from the back
    }
    return all;
}

// Those from which anything can be cut: a bar that is cut up, or whose length cannot be read, is
// none.
std::vector<std::size_t> usable_stock(const PlanTask& task) {
    std::vector<std::size_t> usable;
    for (std::size_t i = 0; i < task.stock.size(); ++i) {
        if (task.stock[i].room() > 0 && task.stock[i].left > 0) usable.push_back(i);
    }
    return usable;
}

std::vector<BarFrom> where_from(const PlanTask& task, const std::vector<std::size_t>& usable) {
    std::vector<BarFrom> from;
    for (const auto i : usable) from.push_back(task.stock[i].from);
    return from;
}

engine::NestProblem problem_of(const Resolved& resolved,
                               const PlanTask& task,
                               const Lengths& lengths) {
    engine::NestProblem problem;
    problem.kerf = resolved.shop.kerf;
    problem.least_held = resolved.shop.least_held;
    for (std::size_t i = 0; i < lengths.length.size(); ++i) {
        problem.pieces.push_back({.length = lengths.length[i],
                                  .quantity = static_cast<std::int64_t>(lengths.pieces[i].size())});
    }
    for (const auto i : usable_stock(task)) {
        const auto& it = task.stock[i];
        engine::NestStock stock{.length = it.length,
                                .price = it.counted,
                                .trim_start = it.first_start,
                                .trim_end = it.end_trim,
                                .is_remnant = it.from != BarFrom::shop};
        if (it.left < std::numeric_limits<int>::max()) stock.supply = it.left;
        problem.stock.push_back(stock);
    }
    return problem;
}

// The pieces of a layout in the order in which they are cut: the longest first, since one cut wrong
// can still become a shorter one. Where the vice would not hold what is left at the last cut, the
// shortest that it holds comes last.
std::vector<std::size_t> in_cutting_order(const Resolved& resolved,
                                          const PlannedBar& bar,
                                          const std::vector<engine::NestCount>& cuts,
                                          const Lengths& lengths) {
    std::vector<std::size_t> order;
    Nm left = bar.length - bar.next_start + resolved.shop.kerf;
    for (const auto& cut : cuts) {
        for (std::int64_t i = 0; i < cut.count; ++i) {
            order.push_back(cut.piece);
            left -= lengths.length[cut.piece] + resolved.shop.kerf;
        }
    }
    const auto is_held = [&](std::size_t piece) {
        return lengths.length[piece] + left >= resolved.shop.least_held;
    };
    const auto held = std::find_if(order.rbegin(), order.rend(), is_held);
    if (held != order.rend()) std::rotate(order.rbegin(), held, held + 1);
    return order;
}

void cut_from(PlannedBar& bar,
              const Resolved& resolved,
              const std::vector<engine::NestCount>& cuts,
              Lengths& lengths) {
    for (const auto length : in_cutting_order(resolved, bar, cuts, lengths)) {
        const Index piece = lengths.pieces[length].back();
        lengths.pieces[length].pop_back();
        bar.cuts.push_back({.piece = piece, .start = bar.next_start});
        bar.next_start += lengths.length[length] + resolved.shop.kerf;
    }
}

// What lies at the saw first, then what else is at hand, then what is bought; of those bars that
// begin with the longest pieces first, so that equal settings of the stop follow each other.
std::vector<const engine::NestLayout*> in_order(const engine::NestPlan& plan,
                                                const PlanTask& task) {
    std::vector<const engine::NestLayout*> order;
    for (const auto& layout : plan.layouts) order.push_back(&layout);
    const auto cuts_before = [](const engine::NestLayout& a, const engine::NestLayout& b) {
        return std::ranges::lexicographical_compare(
            a.cuts, b.cuts, [](const engine::NestCount& x, const engine::NestCount& y) {
                return x.piece != y.piece ? x.piece < y.piece : x.count > y.count;
            });
    };
    std::ranges::stable_sort(order, [&](const auto* a, const auto* b) {
        const auto from_a = task.stock[a->stock].from;
        const auto from_b = task.stock[b->stock].from;
        const bool a_is_bought = from_a == BarFrom::shop;
        const bool b_is_bought = from_b == BarFrom::shop;
        if (a_is_bought != b_is_bought) return b_is_bought;
        if (!a_is_bought && a->stock != b->stock) return a->stock < b->stock;
        return cuts_before(*a, *b);
    });
    return order;
}

engine::NestLimits limits_of(const NestEffort& effort) {
    engine::NestLimits limits;
    if (effort.work) limits.work = *effort.work;
    if (effort.go_on) {
        limits.go_on = [&effort](const engine::NestProgress&) { return effort.go_on(); };
    }
    return limits;
}

// With the pieces and the kerf rounded down to whole steps and the bars up: no plan of the task
// itself costs less than the cheapest of these.
engine::NestProblem rounded_down(engine::NestProblem problem) {
    const auto down = [](std::int64_t& length) { length = length / saw_step * saw_step; };
    for (auto& piece : problem.pieces) {
        down(piece.length);
        piece.length = std::max(piece.length, saw_step);
    }
    down(problem.kerf);
    down(problem.least_held);
    for (auto& stock : problem.stock) {
        stock.length = (stock.length + saw_step - 1) / saw_step * saw_step;
        down(stock.trim_start);
        down(stock.trim_end);
    }
    return problem;
}

bool is_whole(const engine::NestProblem& problem) {
    const auto whole = [](std::int64_t length) { return length % saw_step == 0; };
    return whole(problem.kerf) &&
           std::ranges::all_of(problem.pieces,
                               [&](const auto& piece) { return whole(piece.length); }) &&
           std::ranges::all_of(problem.stock, [&](const auto& stock) {
               return whole(stock.length) && whole(stock.trim_start) && whole(stock.trim_end);
           });
}

// What is found on the saw's grid is proven for lengths that are a little longer: where that
// rounds, the bound is that of lengths a little shorter.
engine::Result<engine::Nest> nested(const engine::NestProblem& problem,
                                    const engine::NestLimits& limits) {
    auto found = engine::nest_on_grid(problem, saw_step, limits);
    if (!found || is_whole(problem)) return found;
    auto nest = std::move(found).value();
    const auto below = engine::nest(rounded_down(problem), limits);
    nest.least_cost = below ? std::min(below->least_cost, nest.plan.cost) : 0;
    nest.is_cheapest = nest.least_cost == nest.plan.cost;
    nest.is_shortest = false;
    return nest;
}

engine::Result<engine::Nest> nested(engine::NestProblem problem, const NestEffort& effort) {
    const auto limits = limits_of(effort);
    auto found = nested(problem, limits);
    if (found || problem.least_held == 0 || !effort.may_hold_badly) return found;
    if (found.error().code == engine::ErrorCode::cancelled) return found;
    problem.least_held = 0;
    return nested(problem, limits);
}

}  // namespace

bool nest_into(const Resolved& resolved,
               const PlanTask& task,
               const NestEffort& effort,
               BarPlan& plan) {
    auto lengths = lengths_of(resolved, task.pieces);
    const auto problem = problem_of(resolved, task, lengths);
    auto found = nested(problem, effort);
    if (!found) return false;
    const auto usable = usable_stock(task);
    auto nest = std::move(found).value();
    if (!effort.work)
        spare_home_bars(problem, where_from(task, usable), saw_step, limits_of(effort), nest.plan);
    for (auto& layout : nest.plan.layouts) layout.stock = usable[layout.stock];
    for (const auto* layout : in_order(nest.plan, task)) {
        for (std::int64_t i = 0; i < layout->bars; ++i) {
            const auto& stock = task.stock[layout->stock];
            if (stock.from != BarFrom::saw) plan.bars.push_back(planned_bar(stock));
            auto& bar = stock.from == BarFrom::saw ? plan.bars[stock.at_saw] : plan.bars.back();
            cut_from(bar, resolved, layout->cuts, lengths);
        }
    }
    plan.cost = (nest.plan.cost + cost_of_odd_halves(task.stock, plan.bars)) / 2;
    plan.least_cost = (nest.least_cost + 1) / 2;  // no plan costs half a hundredth
    plan.is_cheapest = plan.cost == plan.least_cost;
    return true;
}

}  // namespace model

#include "model/schedule/stock_plan.h"

#include "model/schedule/bar_stock.h"

#include <algorithm>
#include <functional>

namespace model {
namespace {

// The pieces cut from each stock, longest first.
std::vector<std::vector<Index>> pieces_by_stock(const Project& project, const Resolved& resolved) {
    std::vector<std::vector<Index>> pieces(project.stock.size());
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto& piece = resolved.pieces[i];
        if (piece.stock < pieces.size()) pieces[piece.stock].push_back(i);
    }
    for (auto& of_stock : pieces) {
        std::ranges::stable_sort(of_stock, std::ranges::greater{},
                                 [&](Index i) { return resolved.pieces[i].length; });
    }
    return pieces;
}

// Moves what no bar would hold, however many there were, to the plan's too long ones.
void set_aside_too_long(const Resolved& resolved, PlanTask& task, BarPlan& plan) {
    for (const auto& it : task.stock) {
        plan.longest_piece_room = std::max(plan.longest_piece_room, it.room());
    }
    const auto is_too_long = [&](Index piece) {
        return resolved.pieces[piece].length > plan.longest_piece_room;
    };
    auto& pieces = task.pieces;
    const auto too_long =
        std::stable_partition(pieces.begin(), pieces.end(), std::not_fn(is_too_long));
    plan.too_long.assign(too_long, pieces.end());
    pieces.erase(too_long, pieces.end());
}

// With the cuts that are planned from it.
PlannedBar bar_at_saw(const SawSeen& saw, Index index) {
    const auto& seen = saw.bars[index];
    PlannedBar bar{.length = seen.length,
                   .from = BarFrom::saw,
                   .at_saw = index,
                   .next_start = seen.next_start};
    for (const auto& cut : seen.cuts) {
        const bool is_planned = std::ranges::binary_search(saw.planned, cut.piece);
        if (is_planned) bar.cuts.push_back({.piece = cut.piece, .start = cut.start});
    }
    return bar;
}

// The cheapest there is, as far as the usual work proves it.
BarPlan nested_plan(const Resolved& resolved,
                    const PlanTask& task,
                    BarPlan plan,
                    BarPlan first,
                    const PlanWish& wish) {
    if (!nest_into(resolved, task, {wish.go_on, std::nullopt, true}, plan)) return first;
    // Lengths that are no whole tenths of a millimetre can fit where the saw's grid sees no room.
    if (first.left_out.empty() && first.cost < plan.cost) {
        first.least_cost = std::min(plan.least_cost, first.cost);
        first.is_cheapest = first.least_cost == first.cost;
        return first;
    }
    return plan;
}

// Nested only where it runs out of bars, and no longer than a frame of the window may take.
BarPlan quick_plan(const Resolved& resolved,
                   const PlanTask& task,
                   BarPlan plan,
                   BarPlan first,
                   const PlanWish& wish) {
    constexpr std::int64_t little_work = 5'000'000;
    if (first.left_out.empty()) return first;
    return nest_into(resolved, task, {wish.go_on, little_work, false}, plan) ? plan : first;
}

}  // namespace

std::vector<StockTask> stock_tasks(const Project& project,
                                   const Catalogue& catalogue,
                                   const Resolved& resolved,
                                   const PlanWish& wish) {
    std::vector<StockTask> tasks;
    auto pieces = pieces_by_stock(project, resolved);
    for (Index i = 0; i < pieces.size(); ++i) {
        const auto& stock = project.stock[i];
        if (pieces[i].empty() && stock.at_saw.empty()) continue;
        StockTask task{.begun = {.stock = i},
                       .saw = saw_seen(project, catalogue, resolved, i),
                       .pieces = std::move(pieces[i])};
        auto& supply = task.begun.supply;
        supply = wish.supply ? wish.supply(stock) : bar_supply(project, resolved, stock);
        supply.refused.insert(supply.refused.end(), task.saw.refused.begin(),
                              task.saw.refused.end());
        tasks.push_back(std::move(task));
    }
    return tasks;
}

BarPlan stock_plan(const Resolved& resolved,
                   const StockTask& task,
                   BarSupply supply,
                   const PlanWish& wish) {
    const auto& saw = task.saw;
    BarPlan plan = task.begun;
    plan.supply = std::move(supply);
    plan.cut = saw.cut;
    PlanTask work{plan_stock(resolved, plan.supply, saw), task.pieces};
    std::erase_if(work.pieces, [&](Index i) {
        return std::ranges::binary_search(saw.cut, i) || std::ranges::binary_search(saw.planned, i);
    });
    for (Index i = 0; i < saw.bars.size(); ++i) plan.bars.push_back(bar_at_saw(saw, i));
    set_aside_too_long(resolved, work, plan);
    if (work.pieces.empty()) {
        plan.is_cheapest = true;
        return plan;
    }
    BarPlan first = plan;
    fit_first(resolved, work, first);
    if (wish.effort == PlanEffort::first_fit)
        return quick_plan(resolved, work, std::move(plan), std::move(first), wish);
    return nested_plan(resolved, work, std::move(plan), std::move(first), wish);
}

}  // namespace model

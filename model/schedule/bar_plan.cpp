#include "model/schedule/bar_plan.h"

#include "model/schedule/bar_stock.h"

#include <algorithm>
#include <limits>

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
    std::ranges::copy_if(task.pieces, std::back_inserter(plan.too_long), is_too_long);
    std::erase_if(task.pieces, is_too_long);
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

BarPlan plan_for(const Resolved& resolved,
                 BarPlan plan,
                 const SawSeen& saw,
                 std::vector<Index> pieces,
                 const PlanWish& wish) {
    plan.cut = saw.cut;
    std::erase_if(pieces, [&](Index i) {
        return std::ranges::binary_search(saw.cut, i) || std::ranges::binary_search(saw.planned, i);
    });
    PlanTask task{plan_stock(resolved, plan.supply, saw), std::move(pieces)};
    for (Index i = 0; i < saw.bars.size(); ++i) plan.bars.push_back(bar_at_saw(saw, i));
    set_aside_too_long(resolved, task, plan);
    if (task.pieces.empty()) {
        plan.is_cheapest = true;
        return plan;
    }
    BarPlan first = plan;
    fit_first(resolved, task, first);
    if (wish.effort == PlanEffort::first_fit) {
        // Only where it runs out of bars, and no longer than a frame of the window may take.
        constexpr std::int64_t little_work = 5'000'000;
        const bool is_whole = first.left_out.empty();
        if (is_whole || !nest_into(resolved, task, {wish.go_on, little_work, false}, plan)) {
            return first;
        }
        return plan;
    }
    if (!nest_into(resolved, task, {wish.go_on, std::nullopt, true}, plan)) return first;
    // Lengths that are no whole tenths of a millimetre can fit where the saw's grid sees no room.
    if (first.left_out.empty() && first.cost < plan.cost) {
        first.least_cost = std::min(plan.least_cost, first.cost);
        first.is_cheapest = first.least_cost == first.cost;
        return first;
    }
    return plan;
}

// How many bars of such an offer earlier plans buy for stocks that are alike: the seller has them
// once.
int taken_before(const Project& project,
                 const std::vector<BarPlan>& plans,
                 const Stock& stock,
                 const OfferedBar& offer) {
    std::ptrdiff_t taken = 0;
    for (const auto& plan : plans) {
        const auto& other = project.stock[plan.stock];
        if (other.section != stock.section || other.alloy != stock.alloy) continue;
        taken += std::ranges::count_if(plan.bars, [&](const PlannedBar& bar) {
            return bar.from == BarFrom::shop && bar.length == offer.length &&
                   bar.halved_from == offer.halved_from;
        });
    }
    return static_cast<int>(taken);
}

// What earlier plans leave of a supply.
BarSupply supply_left(const Project& project,
                      const std::vector<BarPlan>& plans,
                      const Stock& stock,
                      BarSupply supply) {
    for (auto& offer : supply.offers) {
        if (offer.left == std::numeric_limits<int>::max()) continue;
        offer.left = std::max(0, offer.left - taken_before(project, plans, stock, offer));
    }
    return supply;
}

bool is_within(const BarPlan& plan, const BarSupply& supply) {
    return std::ranges::all_of(supply.offers, [&](const OfferedBar& offer) {
        return std::ranges::count_if(plan.bars, [&](const PlannedBar& bar) {
                   return bar.from == BarFrom::shop && bar.length == offer.length &&
                          bar.halved_from == offer.halved_from;
               }) <= offer.left;
    });
}

int halved_bars(const BarPlan& plan) {
    int bars = 0;
    for (const auto& offer : plan.supply.offers) {
        if (offer.halved_from == 0) continue;
        const auto halves = std::ranges::count_if(plan.bars, [&](const PlannedBar& bar) {
            return bar.from == BarFrom::shop && bar.length == offer.length &&
                   bar.halved_from == offer.halved_from;
        });
        bars += static_cast<int>((halves + 1) / 2);
    }
    return bars;
}

// Lengths stand for money where no bar has a price: then no fee is in them.
bool has_fees(const BarPlan& plan) {
    return std::ranges::any_of(
        plan.supply.offers, [](const OfferedBar& offer) { return offer.halved_price.has_value(); });
}

// Cuts that cost nothing are had once in an order. What is planned counts them all as paid: where
// fewer are made than are free, a plan with more of them may be cheaper, and nothing is proven.
void take_off_free_cuts(std::vector<BarPlan>& plans) {
    int left = 0;
    for (const auto& plan : plans) left = std::max(left, plan.supply.free_cuts);
    for (auto& plan : plans) {
        if (!has_fees(plan)) continue;
        const int free = std::min(left, halved_bars(plan));
        left -= free;
        plan.cost -= free * plan.supply.cut_fee;
        plan.least_cost -= free * plan.supply.cut_fee;
    }
    if (left == 0) return;
    for (auto& plan : plans) {
        const bool can_be_halved = std::ranges::any_of(
            plan.supply.offers, [](const OfferedBar& offer) { return offer.halved_from > 0; });
        if (!can_be_halved || plan.supply.cut_fee == 0 || !has_fees(plan)) continue;
        plan.least_cost = std::max<Cents>(0, plan.least_cost - left * plan.supply.cut_fee);
        plan.is_cheapest = plan.cost == plan.least_cost;
    }
}

}  // namespace

std::vector<BarPlan> bar_plans(const Project& project,
                               const Catalogue& catalogue,
                               const Resolved& resolved,
                               const PlanWish& wish) {
    std::vector<BarPlan> plans;
    auto pieces = pieces_by_stock(project, resolved);
    for (Index i = 0; i < pieces.size(); ++i) {
        const auto& stock = project.stock[i];
        if (pieces[i].empty() && stock.at_saw.empty()) continue;
        const auto saw = saw_seen(project, catalogue, resolved, i);
        BarPlan plan{.stock = i};
        plan.supply = wish.supply ? wish.supply(stock) : bar_supply(project, resolved, stock);
        plan.supply.refused.insert(plan.supply.refused.end(), saw.refused.begin(),
                                   saw.refused.end());
        auto apart = plan_for(resolved, plan, saw, pieces[i], wish);
        auto left = supply_left(project, plans, stock, plan.supply);
        if (wish.supply && !is_within(apart, left)) {
            // Each for itself is cheapest; together they would want more than there is.
            const Cents least = apart.least_cost;
            plan.supply = std::move(left);
            apart = plan_for(resolved, std::move(plan), saw, std::move(pieces[i]), wish);
            apart.least_cost = std::min(least, apart.cost);
            apart.is_cheapest = apart.cost == least;
        }
        plans.push_back(std::move(apart));
    }
    take_off_free_cuts(plans);
    return plans;
}

}  // namespace model

#include "model/schedule/free_cuts.h"

#include "model/schedule/shared_halves.h"

#include <algorithm>
#include <cstdint>
#include <utility>

namespace model {
namespace {

struct Terms {
    int free = 0;
    Cents fee = 0;

    bool takes_off() const { return free > 0 && fee > 0; }
};

Terms terms_of(const std::vector<GroupPlans>& groups) {
    Terms terms;
    for (const auto& group : groups) {
        for (const auto& plan : group.paid) {
            terms.free = std::max(terms.free, plan.supply.free_cuts);
            terms.fee = std::max(terms.fee, plan.supply.cut_fee);
        }
    }
    return terms;
}

// The bars of a group that are cut in half, each by the plan that wants its first half: the halves
// of a bar serve two stocks as well as one.
std::vector<int> halved_bars(const std::vector<BarPlan>& plans) {
    std::vector<int> bars(plans.size(), 0);
    if (plans.empty()) return bars;
    for (const auto& offer : plans.front().supply.offers) {
        if (offer.halved_from == 0) continue;
        std::ptrdiff_t halves = 0;
        for (std::size_t i = 0; i < plans.size(); ++i) {
            const auto before = (halves + 1) / 2;
            halves += bars_taken(plans[i].bars, offer);
            bars[i] += static_cast<int>((halves + 1) / 2 - before);
        }
    }
    return bars;
}

// Lengths stand for money where no bar has a price: then no fee is in them.
bool has_fees(const BarPlan& plan) {
    return std::ranges::any_of(
        plan.supply.offers, [](const OfferedBar& offer) { return offer.halved_price.has_value(); });
}

std::size_t in_no_bar(const std::vector<BarPlan>& plans) {
    std::size_t pieces = 0;
    for (const auto& plan : plans) pieces += plan.left_out.size() + plan.too_long.size();
    return pieces;
}

// What the bars of a group cost without any cutting, and how many of them are cut.
struct Outlay {
    Cents bars = 0;
    int cuts = 0;

    Cents with(const Terms& terms) const {
        return bars + terms.fee * std::max(0, cuts - terms.free);
    }
    Outlay operator+(const Outlay& other) const { return {bars + other.bars, cuts + other.cuts}; }
};

Outlay outlay_of(const std::vector<BarPlan>& plans, Cents fee) {
    Outlay outlay;
    const auto halved = halved_bars(plans);
    for (std::size_t i = 0; i < plans.size(); ++i) {
        const int cuts = has_fees(plans[i]) ? halved[i] : 0;
        outlay.bars += plans[i].cost - fee * cuts;
        outlay.cuts += cuts;
    }
    return outlay;
}

Cents least_of(const std::vector<BarPlan>& plans) {
    Cents least = 0;
    for (const auto& plan : plans) least += plan.least_cost;
    return least;
}

// Which of each group's two ways to take: all combinations are tried of a few groups, of more only
// all of one kind.
std::vector<bool> best_ways(const std::vector<GroupPlans>& groups, const Terms& terms) {
    std::vector<std::size_t> open;  // groups in which there is a choice
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const bool is_open = !groups[i].without_fee.empty() &&
                             in_no_bar(groups[i].without_fee) <= in_no_bar(groups[i].paid);
        if (is_open) open.push_back(i);
    }
    constexpr std::size_t most_combined = 10;
    const std::size_t bits = std::min(open.size(), most_combined);
    std::vector<bool> best(groups.size(), false);
    Cents least = 0;
    for (std::uint32_t ways = 0; ways < (1U << bits); ++ways) {
        std::vector<bool> takes(groups.size(), false);
        for (std::size_t i = 0; i < open.size(); ++i)
            takes[open[i]] = (ways >> std::min(i, bits - 1) & 1U) != 0;
        Outlay all;
        for (std::size_t i = 0; i < groups.size(); ++i) {
            all = all + (takes[i] ? outlay_of(groups[i].without_fee, 0)
                                  : outlay_of(groups[i].paid, terms.fee));
        }
        if (ways > 0 && all.with(terms) >= least) continue;
        least = all.with(terms);
        best = std::move(takes);
    }
    return best;
}

// What no plan of the group can cost less than, be all free cuts its own.
Cents bound_of(const GroupPlans& group, std::size_t plan, const Terms& terms) {
    Cents bound = group.paid[plan].least_cost;
    if (has_fees(group.paid[plan])) bound = std::max<Cents>(0, bound - terms.fee * terms.free);
    if (group.without_fee.empty()) return bound;
    return std::max(bound, group.without_fee[plan].least_cost);
}

Cents bound_of_all(const std::vector<GroupPlans>& groups, const Terms& terms) {
    Cents paid = -terms.fee * terms.free;
    Cents without_fee = 0;
    for (const auto& group : groups) {
        paid += least_of(group.paid);
        without_fee += group.without_fee.empty() ? 0 : least_of(group.without_fee);
        if (group.without_fee.empty() && !can_be_cut_at_a_fee(group.paid))
            without_fee += least_of(group.paid);
    }
    return std::max(paid, without_fee);
}

// The plans of a group, the one way or the other, with the cuts paid that are not free any more.
void append_plans(std::vector<BarPlan>& plans,
                  const GroupPlans& group,
                  bool is_without_fee,
                  const Terms& terms,
                  int& free) {
    const auto& chosen = is_without_fee ? group.without_fee : group.paid;
    const auto halved = halved_bars(chosen);
    for (std::size_t i = 0; i < chosen.size(); ++i) {
        auto plan = chosen[i];
        plan.supply = group.paid[i].supply;
        if (terms.takes_off() && has_fees(plan)) {
            const int for_nothing = std::min(free, halved[i]);
            free -= for_nothing;
            plan.cost += terms.fee * ((is_without_fee ? halved[i] : 0) - for_nothing);
            plan.least_cost = std::min(plan.cost, bound_of(group, i, terms));
            plan.is_cheapest = plan.cost == plan.least_cost;
        }
        plans.push_back(std::move(plan));
    }
}

}  // namespace

bool can_be_cut_at_a_fee(const std::vector<BarPlan>& plans) {
    return std::ranges::any_of(plans, has_fees);
}

bool want_plans_without_fee(const std::vector<GroupPlans>& groups) {
    const auto terms = terms_of(groups);
    return terms.takes_off() && std::ranges::any_of(groups, [](const GroupPlans& group) {
               return can_be_cut_at_a_fee(group.paid);
           });
}

BarSupply without_fee(BarSupply supply) {
    for (auto& offer : supply.offers) {
        if (!offer.halved_price) continue;
        *offer.halved_price -= supply.cut_fee;
        offer.price = (*offer.halved_price + 1) / 2;
    }
    return supply;
}

std::vector<BarPlan> with_free_cuts(std::vector<GroupPlans> groups) {
    const auto terms = terms_of(groups);
    const auto ways = best_ways(groups, terms);
    const Cents least = bound_of_all(groups, terms);
    std::vector<BarPlan> plans;
    int free = terms.takes_off() ? terms.free : 0;
    for (std::size_t i = 0; i < groups.size(); ++i)
        append_plans(plans, groups[i], ways[i], terms, free);
    Cents all = 0;
    for (const auto& plan : plans) all += plan.cost;
    // Of plans that leave pieces out nothing is proven together.
    if (!terms.takes_off() || all > least || in_no_bar(plans) > 0) return plans;
    for (auto& plan : plans) {
        if (!has_fees(plan)) continue;
        plan.least_cost = plan.cost;
        plan.is_cheapest = true;
    }
    return plans;
}

}  // namespace model

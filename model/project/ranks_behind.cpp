#include "model/project/ranks_behind.h"

#include "model/project/bar_crossings.h"

#include <algorithm>
#include <set>
#include <utility>
#include <vector>

namespace model {

namespace {

constexpr int one_behind = 5;  // between two of the usual ranks

// The bar that meets it at one end while another one of that run passes its other end.
const Member* pushed_in(const Placed& it, const std::vector<Placed>& all) {
    for (const Axis run : across(it.bar->run)) {
        for (std::size_t end = 0; end < 2; ++end) {
            const Met met = met_at(it, end, run, all);
            if (met.is_passed || met.ending == nullptr || met.ending->rank) continue;
            if (rank_of(*met.ending) < rank_of(*it.bar)) continue;
            if (met_at(it, 1 - end, run, all).is_passed) return met.ending;
        }
    }
    return nullptr;
}

bool is_passed_at_an_end(const Placed& it, Axis run, const std::vector<Placed>& all) {
    return met_at(it, 0, run, all).is_passed || met_at(it, 1, run, all).is_passed;
}

// Whether the bar's other end lies at one that nothing pushes in, with another bar between the two
// that is cut back by as much as this one is moved in.
bool squeezes(const Placed& bar,
              std::size_t end,
              const Placed& pusher,
              const std::vector<Placed>& all) {
    const std::size_t along = index_of(bar.bar->run);
    const Axis third = static_cast<Axis>(3 - along - index_of(pusher.bar->run));
    const Met behind = met_at(bar, end, third, all);
    if (behind.ending == nullptr || rank_of(*behind.ending) < rank_of(*bar.bar)) return false;
    return std::ranges::any_of(all, [&](const Placed& other) {
        const auto met = crossing(other, bar);
        return met && other.bar->run == pusher.bar->run && met->at[along] == bar.at[along][end] &&
               !met->first_ends && !is_passed_at_an_end(other, bar.bar->run, all);
    });
}

// A bar that ends on the span of one that others of its run push in; null where there is none.
const Member* pushed_far(const Placed& pusher, Axis run, const std::vector<Placed>& all) {
    for (const Placed& bar : all) {
        if (bar.bar->run != run) continue;
        const auto met = crossing(bar, pusher);
        if (!met || !met->first_ends || met->second_ends) continue;
        if (!is_passed_at_an_end(pusher, bar.bar->run, all)) continue;
        const std::size_t along = index_of(bar.bar->run);
        const std::size_t far = bar.at[along][0] == met->at[along] ? 1 : 0;
        if (squeezes(bar, far, pusher, all)) return bar.bar;
    }
    return nullptr;
}

// The rank that a bar would get if it had none.
std::optional<int> rank_behind(Frame frame, const std::string& name, const PlanePlaces& places) {
    std::ranges::find(frame.members, name, &Member::name)->rank.reset();
    const auto all = placed_members(frame, places);
    const auto it =
        std::ranges::find_if(all, [&](const Placed& one) { return one.bar->name == name; });
    const Member* pushed = it == all.end() ? nullptr : pushed_in(*it, all);
    if (pushed == nullptr) return std::nullopt;
    return rank_of(*pushed) + one_behind;
}

}  // namespace

std::optional<PushedFar> newly_pushed_far(const Frame& frame,
                                          const Frame& before,
                                          const PlanePlaces& places,
                                          Axis run) {
    const auto all = placed_members(frame, places);
    for (const Placed& pusher : all) {
        const auto was = std::ranges::find(before.members, pusher.bar->name, &Member::name);
        if (!pusher.bar->rank || was == before.members.end() || was->rank) continue;
        if (const Member* bar = pushed_far(pusher, run, all))
            return PushedFar{pusher.bar->name, bar->name};
    }
    return std::nullopt;
}

void drop_spent_ranks(Frame& frame, const Frame& before, const PlanePlaces& places) {
    for (Member& bar : frame.members) {
        const auto was = std::ranges::find(before.members, bar.name, &Member::name);
        if (!bar.rank || was == before.members.end() || was->rank != bar.rank) continue;
        if (rank_behind(before, bar.name, places) != bar.rank) continue;
        if (!rank_behind(frame, bar.name, places)) bar.rank.reset();
    }
}

void let_lie_behind(Frame& frame, const Frame& before, const PlanePlaces& places) {
    const auto all_before = placed_members(before, places);
    std::set<std::string> known;
    for (const Placed& it : all_before) {
        if (pushed_in(it, all_before) != nullptr) known.insert(it.bar->name);
    }
    const auto all = placed_members(frame, places);
    std::vector<std::pair<std::string, int>> ranks;
    for (const Placed& it : all) {
        if (it.bar->rank || known.contains(it.bar->name)) continue;
        const Member* pushed = pushed_in(it, all);
        if (pushed != nullptr) ranks.emplace_back(it.bar->name, rank_of(*pushed) + one_behind);
    }
    for (const auto& [name, rank] : ranks) {
        std::ranges::find(frame.members, name, &Member::name)->rank = rank;
    }
}

}  // namespace model

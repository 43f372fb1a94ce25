#include "model/project/lie_behind.h"

#include "model/project/bar_crossings.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <utility>

namespace model {

namespace {

std::size_t index_in(const Frame& frame, const Placed& it) {
    return static_cast<std::size_t>(it.bar - frame.members.data());
}

bool lies_outside(const Placed& a, const Placed& b) {
    const auto met = crossing(a, b);
    if (!met) return false;
    if (met->first_ends != met->second_ends) return met->second_ends;
    return met->first_ends &&
           std::tuple(rank_of(*a.bar), a.bar) < std::tuple(rank_of(*b.bar), b.bar);
}

// By names: who is parted, by whom.
using Parted = std::map<std::pair<std::string, std::string>, std::array<Nm, 3>>;

Parted parted(const Frame& frame, const PlanePlaces& places) {
    const auto depths = depths_of_members(frame, places);
    const auto all = placed_members(frame, places);
    const auto key = [&](const Placed& it) {
        const std::size_t i = index_in(frame, it);
        return std::tuple(depths[i], rank_of(*it.bar), i);
    };
    Parted found;
    for (const Placed& a : all) {
        for (const Placed& b : all) {
            const auto met = crossing(a, b);
            if (!met || met->first_ends || met->second_ends || key(a) < key(b)) continue;
            found.emplace(std::pair(a.bar->name, b.bar->name), met->at);
        }
    }
    return found;
}

// By names, either way round.
using Pairs = std::set<std::pair<std::string, std::string>>;

Pairs meetings(const Frame& frame, const PlanePlaces& places) {
    Pairs found;
    const auto all = placed_members(frame, places);
    for (const Placed& a : all) {
        for (const Placed& b : all) {
            if (crossing(a, b)) found.emplace(a.bar->name, b.bar->name);
        }
    }
    return found;
}

// Whether what meets the bar at that place has legs along it to either side, so that both its parts
// have something to lie against.
bool has_legs_both_ways(const Frame& frame,
                        const std::string& name,
                        const std::array<Nm, 3>& at,
                        const PlanePlaces& places) {
    const auto bar = std::ranges::find(frame.members, name, &Member::name);
    ReachBox point;
    for (std::size_t k = 0; k < 3; ++k) point[k] = {at[k], at[k]};
    std::set<Sense> legs;
    for (const Placed& it : placed_members(frame, places)) {
        if (it.bar->run == bar->run || !lies_within(point, it.at)) continue;
        legs.insert(it.bar->legs[across(it.bar->run)[0] == bar->run ? 0 : 1]);
    }
    return legs.size() == 2;
}

}  // namespace

std::vector<int> depths_of_members(const Frame& frame, const PlanePlaces& places) {
    std::vector<std::vector<std::size_t>> outside(
        frame.members.size());  // of each, those before it
    const auto all = placed_members(frame, places);
    for (const Placed& it : all) {
        for (const Placed& other : all) {
            if (lies_outside(other, it))
                outside[index_in(frame, it)].push_back(index_in(frame, other));
        }
    }
    std::vector<int> depths(frame.members.size(), 0);
    // Each round only adds; a ring of bars, each outside the next, would go on for ever.
    bool has_changed = true;
    for (std::size_t round = 0; has_changed && round < frame.members.size(); ++round) {
        has_changed = false;
        for (std::size_t i = 0; i < depths.size(); ++i) {
            for (const std::size_t k : outside[i]) {
                if (depths[i] > depths[k]) continue;
                depths[i] = depths[k] + 1;
                has_changed = true;
            }
        }
    }
    return depths;
}

std::vector<NewlyParted> newly_parted(const Frame& frame,
                                      const Frame& before,
                                      const PlanePlaces& places) {
    const Parted then = parted(before, places);
    std::vector<NewlyParted> found;
    for (const auto& [names, at] : parted(frame, places)) {
        const auto& [bar, by] = names;
        if (then.contains({by, bar})) found.push_back({bar, by, at});
    }
    return found;
}

std::vector<NewlyParted> newly_parted_loose(const Frame& frame,
                                            const Frame& before,
                                            const PlanePlaces& places) {
    const Parted then = parted(before, places);
    const Pairs met = meetings(before, places);
    std::vector<NewlyParted> found;
    for (const auto& [names, at] : parted(frame, places)) {
        const auto& [bar, by] = names;
        if (then.contains(names) || !met.contains(names)) continue;
        if (!has_legs_both_ways(frame, bar, at, places)) found.push_back({bar, by, at});
    }
    return found;
}

}  // namespace model

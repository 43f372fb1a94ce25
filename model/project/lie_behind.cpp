#include "model/project/lie_behind.h"

#include "model/project/frame_bars.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <utility>

namespace model {

namespace {

constexpr int one_behind = 5;  // between two of the usual ranks

// As resolve takes it; lower ones lie outside.
int rank_of(const Member& member) {
    return member.rank.value_or(member.run == Axis::z ? 10 : member.run == Axis::x ? 20 : 30);
}

struct Placed {
    const Member* bar = nullptr;
    ReachBox at;
};

std::vector<Placed> placed(const Frame& frame, const PlanePlaces& places) {
    std::vector<Placed> all;
    for (const Member& bar : frame.members) {
        if (const auto at = box_of(bar, places)) all.push_back({&bar, *at});
    }
    return all;
}

// How bars of one run meet an end of another bar.
struct Met {
    bool is_passed = false;
    const Member* ending = nullptr;
};

Met met_at(const Placed& it, std::size_t end, Axis run, const std::vector<Placed>& all) {
    const std::size_t along = index_of(it.bar->run);
    const std::size_t k = index_of(run);
    Met met;
    for (const Placed& other : all) {
        if (other.bar->run != run || other.at[along][0] != it.at[along][end]) continue;
        const std::size_t third = 3 - along - k;
        if (other.at[third] != it.at[third]) continue;
        const Nm line = it.at[k][0];
        if (other.at[k][0] < line && line < other.at[k][1]) met.is_passed = true;
        if (other.at[k][0] == line || other.at[k][1] == line) met.ending = other.bar;
    }
    return met;
}

std::size_t index_in(const Frame& frame, const Placed& it) {
    return static_cast<std::size_t>(it.bar - frame.members.data());
}

bool ends_at(const Reach& reach, Nm place) { return reach[0] == place || reach[1] == place; }

bool holds(const Reach& reach, Nm place) { return reach[0] <= place && place <= reach[1]; }

// Where the lines of two meet.
struct Crossing {
    bool first_ends = false;
    bool second_ends = false;
    std::array<Nm, 3> at{};
};

std::optional<Crossing> crossing(const Placed& a, const Placed& b) {
    const std::size_t run_a = index_of(a.bar->run);
    const std::size_t run_b = index_of(b.bar->run);
    if (run_a == run_b) return std::nullopt;
    const std::size_t third = 3 - run_a - run_b;
    const Nm line_a = a.at[run_b][0];
    const Nm line_b = b.at[run_a][0];
    if (a.at[third] != b.at[third]) return std::nullopt;
    if (!holds(a.at[run_a], line_b) || !holds(b.at[run_b], line_a)) return std::nullopt;
    Crossing met{ends_at(a.at[run_a], line_b), ends_at(b.at[run_b], line_a), {}};
    met.at[run_a] = line_b;
    met.at[run_b] = line_a;
    met.at[third] = a.at[third][0];
    return met;
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
    const auto all = placed(frame, places);
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
    const auto all = placed(frame, places);
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
    for (const Placed& it : placed(frame, places)) {
        if (it.bar->run == bar->run || !lies_within(point, it.at)) continue;
        legs.insert(it.bar->legs[across(it.bar->run)[0] == bar->run ? 0 : 1]);
    }
    return legs.size() == 2;
}

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
    const auto all = placed(frame, places);
    const auto it =
        std::ranges::find_if(all, [&](const Placed& one) { return one.bar->name == name; });
    const Member* pushed = it == all.end() ? nullptr : pushed_in(*it, all);
    if (pushed == nullptr) return std::nullopt;
    return rank_of(*pushed) + one_behind;
}

}  // namespace

std::vector<int> depths_of_members(const Frame& frame, const PlanePlaces& places) {
    std::vector<std::vector<std::size_t>> outside(
        frame.members.size());  // of each, those before it
    const auto all = placed(frame, places);
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

std::optional<PushedFar> newly_pushed_far(const Frame& frame,
                                          const Frame& before,
                                          const PlanePlaces& places,
                                          Axis run) {
    const auto all = placed(frame, places);
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
    const auto all_before = placed(before, places);
    std::set<std::string> known;
    for (const Placed& it : all_before) {
        if (pushed_in(it, all_before) != nullptr) known.insert(it.bar->name);
    }
    const auto all = placed(frame, places);
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

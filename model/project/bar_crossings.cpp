#include "model/project/bar_crossings.h"

namespace model {

namespace {

bool ends_at(const Reach& reach, Nm place) { return reach[0] == place || reach[1] == place; }

bool holds(const Reach& reach, Nm place) { return reach[0] <= place && place <= reach[1]; }

}  // namespace

int rank_of(const Member& member) {
    return member.rank.value_or(member.run == Axis::z ? 10 : member.run == Axis::x ? 20 : 30);
}

std::vector<Placed> placed_members(const Frame& frame, const PlanePlaces& places) {
    std::vector<Placed> all;
    for (const Member& bar : frame.members) {
        if (const auto at = box_of(bar, places)) all.push_back({&bar, *at});
    }
    return all;
}

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

}  // namespace model

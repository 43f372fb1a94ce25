#include "model/resolve/run_on.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <tuple>
#include <vector>

namespace model {
namespace {

struct BarEnd {
    Index bar = 0;
    bool is_to = false;
};

// A bar with its roots on the lines has its heel beyond both.
bool is_at_root(const Bar& bar) { return bar.seat_offset[0] < 0 && bar.seat_offset[1] < 0; }

Point corner_of(const Bar& bar, bool is_to) {
    Point corner{};
    corner[index_of(bar.run)] = is_to ? bar.to : bar.from;
    for (std::size_t i = 0; i < 2; ++i) corner[bar.axis[i]] = bar.line[i];
    return corner;
}

bool run_three_ways(std::span<const Bar> bars, const std::vector<BarEnd>& ends) {
    std::array<bool, 3> runs{};
    for (const auto& end : ends) runs[index_of(bars[end.bar].run)] = true;
    return ends.size() == 3 && runs[0] && runs[1] && runs[2];
}

// How far the heel of the other bar lies beyond the corner, where the end looks; less than 0: the
// other way.
Nm heel_beyond(const Bar& bar, bool is_to, const Bar& other) {
    const std::size_t i = across_index(other, index_of(bar.run));
    const int outward = is_to ? 1 : -1;
    return outward * other.leg[i] * other.seat_offset[i];
}

void run_on(std::span<Bar> bars, const std::vector<BarEnd>& ends) {
    const auto last = std::ranges::max_element(ends, [&](const BarEnd& a, const BarEnd& b) {
        return std::tuple(bars[a.bar].corner_order, a.bar) <
               std::tuple(bars[b.bar].corner_order, b.bar);
    });
    Bar& bar = bars[last->bar];
    std::optional<Nm> least;
    for (const auto& end : ends) {
        if (end.bar == last->bar) continue;
        const Nm beyond = heel_beyond(bar, last->is_to, bars[end.bar]);
        least = std::min(least.value_or(beyond), beyond);
    }
    if (*least <= 0) return;
    if (last->is_to) {
        bar.to += *least;
    } else {
        bar.from -= *least;
    }
}

}  // namespace

void run_on_at_roots(std::span<Bar> bars) {
    std::map<Point, std::vector<BarEnd>> corners;
    for (Index i = 0; i < bars.size(); ++i) {
        if (!is_at_root(bars[i])) continue;
        for (const bool is_to : {false, true}) {
            corners[corner_of(bars[i], is_to)].push_back({i, is_to});
        }
    }
    for (const auto& [corner, ends] : corners) {
        if (run_three_ways(bars, ends)) run_on(bars, ends);
    }
}

}  // namespace model

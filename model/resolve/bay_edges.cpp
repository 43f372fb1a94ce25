#include "model/resolve/bay_edges.h"

#include <algorithm>
#include <optional>

namespace model {
namespace {

// Which of the four quarters round the line are taken up: [towards more x][towards more y].
using Quarters = std::array<std::array<bool, 2>, 2>;

Quarters quarters_between(std::span<const Box> beside, Nm x, Nm y, Nm lo, Nm hi) {
    Quarters taken{};
    for (const Box& bay : beside) {
        if (bay.lo[2] > lo || bay.hi[2] < hi) continue;
        const std::array<bool, 2> in_x{bay.lo[0]<x, bay.hi[0]> x};
        const std::array<bool, 2> in_y{bay.lo[1]<y, bay.hi[1]> y};
        for (std::size_t s = 0; s < 2; ++s) {
            for (std::size_t t = 0; t < 2; ++t) {
                taken[s][t] = taken[s][t] || (in_x[s] && in_y[t]);
            }
        }
    }
    return taken;
}

// Legs go to the one quarter that is taken, or to the one that is not. Of two bays that meet at the
// line only, the first one's corner is framed.
std::optional<UprightEdge> edge_between(const Quarters& taken, Nm lo, Nm hi) {
    const int count = taken[0][0] + taken[0][1] + taken[1][0] + taken[1][1];
    const bool is_crossed = count == 2 && taken[0][0] == taken[1][1];
    if (count != 1 && count != 3 && !is_crossed) return std::nullopt;
    UprightEdge edge{lo, hi, count == 3 ? Seat::root : Seat::heel, {}};
    for (std::size_t i = 0; i < 4; ++i) {
        const std::size_t s = i / 2;
        const std::size_t t = i % 2;
        if (taken[s][t] == (count == 3)) continue;
        edge.legs = {s == 1 ? Sense::plus : Sense::minus, t == 1 ? Sense::plus : Sense::minus};
        break;
    }
    return edge;
}

}  // namespace

std::vector<UprightEdge> upright_edges(std::span<const Box> bays, Nm x, Nm y) {
    std::vector<Box> beside;
    std::vector<Nm> levels;
    for (const Box& bay : bays) {
        if (x < bay.lo[0] || x > bay.hi[0] || y < bay.lo[1] || y > bay.hi[1]) continue;
        beside.push_back(bay);
        levels.insert(levels.end(), {bay.lo[2], bay.hi[2]});
    }
    std::sort(levels.begin(), levels.end());
    levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
    std::vector<UprightEdge> edges;
    for (std::size_t i = 1; i < levels.size(); ++i) {
        const auto taken = quarters_between(beside, x, y, levels[i - 1], levels[i]);
        const auto edge = edge_between(taken, levels[i - 1], levels[i]);
        if (!edge) continue;
        const bool goes_on = !edges.empty() && edges.back().to == edge->from &&
                             edges.back().seat == edge->seat && edges.back().legs == edge->legs;
        if (goes_on) {
            edges.back().to = edge->to;
        } else {
            edges.push_back(*edge);
        }
    }
    return edges;
}

}  // namespace model

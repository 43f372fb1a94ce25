#include "model/assembly/far_apart.h"

#include <algorithm>
#include <limits>

namespace model {
namespace {

double squared_distance(const engine::Point& a, const engine::Point& b) {
    double sum = 0.0;
    for (std::size_t k = 0; k < 3; ++k) {
        const auto apart = static_cast<double>(a[k] - b[k]);
        sum += apart * apart;
    }
    return sum;
}

engine::Point middle_of(std::span<const engine::Point> places) {
    engine::Box all{places.front(), places.front()};
    for (const auto& place : places) all = engine::hull(all, {place, place});
    return {(all.lo[0] + all.hi[0]) / 2, (all.lo[1] + all.hi[1]) / 2, (all.lo[2] + all.hi[2]) / 2};
}

}  // namespace

std::vector<std::size_t> turns_far_apart(std::span<const engine::Point> places) {
    std::vector<std::size_t> turns;
    if (places.empty()) return turns;
    std::vector<double> apart;
    const auto middle = middle_of(places);
    for (const auto& place : places) apart.push_back(squared_distance(place, middle));
    while (turns.size() < places.size()) {
        const auto next = static_cast<std::size_t>(std::ranges::max_element(apart) - apart.begin());
        for (std::size_t k = 0; k < places.size(); ++k) {
            const double from_next = squared_distance(places[k], places[next]);
            apart[k] = turns.empty() ? from_next : std::min(apart[k], from_next);
        }
        turns.push_back(next);
        for (const std::size_t done : turns) apart[done] = -1.0;
    }
    return turns;
}

}  // namespace model

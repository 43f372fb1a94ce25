#include "model/resolve/point_layout.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <functional>
#include <limits>

namespace model {
namespace {

constexpr Nm ceil_div(Nm a, Nm b) { return a >= 0 ? (a + b - 1) / b : -(-a / b); }
constexpr Nm floor_div(Nm a, Nm b) { return -ceil_div(-a, b); }

struct Place {
    std::array<Nm, 2> at{};
    Nm margin = 0;  // to edges and obstacles, beyond the rules
};

double squared_apart(const Place& a, const Place& b) {
    const auto x = static_cast<double>(a.at[0] - b.at[0]);
    const auto y = static_cast<double>(a.at[1] - b.at[1]);
    return x * x + y * y;
}

double apart(const Place& a, const Place& b) { return std::sqrt(squared_apart(a, b)); }

Nm margin_to(const Region& obstacle, const std::array<Nm, 2>& at) {
    return std::max({obstacle.lo[0] - at[0], at[0] - obstacle.hi[0], obstacle.lo[1] - at[1],
                     at[1] - obstacle.hi[1]});
}

// The most that the margin at `x` can be, wherever along the other axis.
Nm most_margin_at(const SlantedRoom& room, Nm x) {
    return std::min({x - room.within.lo[0], room.within.hi[0] - x,
                     (room.within.hi[1] - room.within.lo[1]) / 2});
}

// Those that can make it less. What leans is held by many thin obstacles.
void keep_near(const SlantedRoom& room, Nm x, std::vector<Region>& near) {
    near.clear();
    const Nm most = most_margin_at(room, x);
    for (const auto& obstacle : room.obstacles) {
        if (std::max(obstacle.lo[0] - x, x - obstacle.hi[0]) < most) near.push_back(obstacle);
    }
}

// Below 0 where the place is not free. A nanometre is kept for the rounding of holes in what leans.
Nm margin_at(const SlantedRoom& room, std::span<const Region> near, const std::array<Nm, 2>& at) {
    Nm margin = std::min({at[0] - room.within.lo[0], room.within.hi[0] - at[0],
                          at[1] - room.within.lo[1], room.within.hi[1] - at[1]});
    for (const auto& obstacle : near) {
        margin = std::min(margin, margin_to(obstacle, at));
        if (margin < 0) return margin;
    }
    const FlatPoint point{static_cast<double>(at[0]), static_cast<double>(at[1])};
    constexpr double rounding = 2.0;
    for (const auto& polygon : room.inside) {
        const double deep = depth_within(polygon, point) - room.edge_distance - rounding;
        margin = std::min(margin, static_cast<Nm>(std::floor(deep)));
        if (margin < 0) return margin;
    }
    for (const auto& kept : room.outside) {
        const double clear = distance_to(kept.polygon, point) - kept.by - rounding;
        margin = std::min(margin, static_cast<Nm>(std::floor(clear)));
    }
    return margin;
}

// On a fine tape not every mark is tried.
constexpr Nm most_tried = 40;

std::vector<Place> free_places(const SlantedRoom& room, const Marks& marks) {
    std::array<Nm, 2> least{};
    std::array<Nm, 2> most{};
    std::array<Nm, 2> stride{};
    for (std::size_t k = 0; k < 2; ++k) {
        least[k] = ceil_div(room.within.lo[k] - marks.phase[k], marks.step);
        most[k] = floor_div(room.within.hi[k] - marks.phase[k], marks.step);
        stride[k] = std::max<Nm>(1, ceil_div(most[k] - least[k], most_tried));
    }
    std::vector<Place> places;
    std::vector<Region> near;
    for (Nm i = least[0]; i <= most[0]; i += stride[0]) {
        const Nm x = marks.phase[0] + i * marks.step;
        keep_near(room, x, near);
        for (Nm j = least[1]; j <= most[1]; j += stride[1]) {
            Place place{.at = {x, marks.phase[1] + j * marks.step}};
            place.margin = margin_at(room, near, place.at);
            if (place.margin >= 0) places.push_back(place);
        }
    }
    return places;
}

// What a second place leaves spare: half of what lies between the two beyond the pitch counts.
Nm margin_beside(const Place& place, const Place& other, Nm pitch) {
    const double spare = (apart(place, other) - static_cast<double>(pitch)) / 2.0;
    return std::min(place.margin, static_cast<Nm>(std::floor(spare)));
}

// How far at most any of them lies from one.
class FurthestOf {
public:
    explicit FurthestOf(std::span<const Place> places) {
        for (const auto& place : places) {
            for (std::size_t k = 0; k < 2; ++k) {
                lo_[k] = std::min(lo_[k], place.at[k]);
                hi_[k] = std::max(hi_[k], place.at[k]);
            }
        }
    }

    double squared_from(const Place& place) const {
        double squared = 0.0;
        for (std::size_t k = 0; k < 2; ++k) {
            const auto way =
                static_cast<double>(std::max(place.at[k] - lo_[k], hi_[k] - place.at[k]));
            squared += way * way;
        }
        return squared;
    }

private:
    std::array<Nm, 2> lo_{std::numeric_limits<Nm>::max(), std::numeric_limits<Nm>::max()};
    std::array<Nm, 2> hi_{std::numeric_limits<Nm>::lowest(), std::numeric_limits<Nm>::lowest()};
};

// The pair with the largest least margin; of equal ones that which stands furthest apart. Those
// with the most margin come first, so that the rest need not be looked at.
std::vector<Place> best_pair(std::vector<Place> places, Nm pitch) {
    std::ranges::stable_sort(places, std::ranges::greater{}, &Place::margin);
    const FurthestOf furthest{places};
    std::vector<Place> best;
    Nm best_margin = -1;
    double best_apart = 0.0;
    // Most pairs are nearer than that by far; a nanometre is left to rounding.
    const auto least_apart = [&] {
        return static_cast<double>(pitch + 2 * std::max<Nm>(best_margin, 0) - 1);
    };
    for (std::size_t i = 0; i < places.size() && places[i].margin >= best_margin; ++i) {
        if (furthest.squared_from(places[i]) < least_apart() * least_apart()) continue;
        for (std::size_t j = i + 1; j < places.size(); ++j) {
            if (places[j].margin < best_margin) break;
            const double least = least_apart();
            if (squared_apart(places[i], places[j]) < least * least) continue;
            const Nm margin =
                std::min(places[i].margin, margin_beside(places[j], places[i], pitch));
            if (margin < best_margin || margin < 0) continue;
            const double distance = apart(places[i], places[j]);
            if (margin == best_margin && distance <= best_apart) continue;
            best_margin = margin;
            best_apart = distance;
            best = {places[i], places[j]};
        }
    }
    return best;
}

// Each further place where it leaves most.
void add_places(std::vector<Place>& chosen,
                const std::vector<Place>& places,
                std::size_t wanted,
                Nm pitch) {
    while (chosen.size() < wanted) {
        const Place* best = nullptr;
        Nm best_margin = -1;
        for (const auto& place : places) {
            Nm margin = place.margin;
            for (const auto& other : chosen) {
                margin = std::min(margin, margin_beside(place, other, pitch));
            }
            if (margin <= best_margin) continue;
            best_margin = margin;
            best = &place;
        }
        if (best == nullptr) return;
        chosen.push_back(*best);
    }
}

// For three and more a pair with the largest margin may stand in the way of the others: they are
// begun from the pair that stands furthest apart as well.
std::vector<Place> furthest_pair(const std::vector<Place>& places, Nm pitch) {
    std::vector<Place> best;
    double best_apart = static_cast<double>(pitch);
    for (std::size_t i = 0; i < places.size(); ++i) {
        for (std::size_t j = i + 1; j < places.size(); ++j) {
            const double distance = apart(places[i], places[j]);
            if (distance < best_apart) continue;
            best_apart = distance;
            best = {places[i], places[j]};
        }
    }
    return best;
}

std::vector<Place> chosen_places(const std::vector<Place>& places, std::size_t wanted, Nm pitch) {
    std::vector<Place> chosen;
    if (wanted > 1) chosen = best_pair(places, pitch);
    add_places(chosen, places, wanted, pitch);
    if (wanted < 3 || chosen.size() == wanted) return chosen;
    auto other = furthest_pair(places, pitch);
    add_places(other, places, wanted, pitch);
    return other.size() > chosen.size() ? other : chosen;
}

}  // namespace

Layout best_points(const SlantedRoom& room, const Marks& marks, int wanted, Nm pitch) {
    Layout layout{.marks = marks};
    const auto places = free_places(room, marks);
    const auto chosen = chosen_places(places, static_cast<std::size_t>(std::max(wanted, 0)), pitch);
    if (chosen.empty()) return layout;
    layout.pattern = Pattern::points;
    layout.apart = std::max<Nm>(1, ceil_div(pitch, marks.step));
    layout.count = static_cast<int>(chosen.size());
    Nm tightest = chosen.front().margin;
    for (const auto& place : chosen) {
        layout.points.push_back(place.at);
        tightest = std::min(tightest, place.margin);
    }
    layout.margin = tightest / marks.step;
    std::sort(layout.points.begin(), layout.points.end());
    return layout;
}

}  // namespace model

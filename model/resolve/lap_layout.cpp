#include "model/resolve/lap_layout.h"

#include "model/resolve/lap_room.h"
#include "model/resolve/layout_rules.h"
#include "model/resolve/surroundings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace model {
namespace {

const Plate& upper_wall(const LapSite& site) { return site.upper.plates[site.lap.upper_wall]; }
const Plate& lower_wall(const LapSite& site) { return site.lower.plates[site.lap.lower_wall]; }

// Where the stack's two outer faces lie along the normal: the upper one's, then the lower one's.
std::array<Nm, 2> surfaces(const LapSite& site) {
    const std::size_t n = site.lap.normal_axis;
    const Box& upper = upper_wall(site).box;
    const Box& lower = lower_wall(site).box;
    std::array<Nm, 2> outer{upper.lo[n], lower.hi[n]};
    if (site.lap.towards_lower < 0) outer = {upper.hi[n], lower.lo[n]};
    if (site.cover == nullptr) return outer;
    const Box& cover = site.cover->plates[0].box;
    const Nm thickness = cover.hi[n] - cover.lo[n];
    if (site.lap.covers_upper) {
        outer[0] -= site.lap.towards_lower * thickness;
    } else {
        outer[1] += site.lap.towards_lower * thickness;
    }
    return outer;
}

bool leans(const Piece& piece) { return piece.lean != no_index; }

Nm phase_of(Nm value, Nm step) { return ((value % step) + step) % step; }

// Least distance from `value` to a multiple of `step`.
Nm off_the_marks(Nm value, Nm step) {
    const Nm over = phase_of(value, step);
    return std::min(over, step - over);
}

// The marks of the pattern's tape: distances from its datum end, and gauges from its heel. Where
// the other piece's marks fall elsewhere by more than the holes' slack it is match-drilled. What
// leans is never the pattern: it is drilled through the other.
Marks marks_for(const LapSite& site, const FastenerChoice& choice, Nm step, LapLayout& result) {
    const LapAxes axes = lap_axes(site.upper, site.lower, site.lap.normal_axis);
    const bool upper_is_pattern = leans(site.lower) || (result.head_on_upper && !leans(site.upper));
    const Piece& pattern = upper_is_pattern ? site.upper : site.lower;
    const Piece& other = upper_is_pattern ? site.lower : site.upper;
    Marks marks{.step = step};
    result.match_drilled = false;
    for (std::size_t k = 0; k < 2; ++k) {
        const std::size_t axis = axes.axis[k];
        const Nm apart = other.datum[axis] - pattern.datum[axis];
        result.match_drilled |= !leans(other) && off_the_marks(apart, step) > choice.slack;
        const Nm datum = pattern.datum[axis] - axes.heel[axis];
        marks.phase[k] = phase_of(axes.sense[k] * datum, step);
    }
    return marks;
}

}  // namespace

Nm stack_of(const LapSite& site) {
    const auto outer = surfaces(site);
    return std::abs(outer[1] - outer[0]);
}

LapLayout LapLayouts::best(const LapSite& site, const FastenerChoice& choice, Index wanted) {
    // Half marks serve where no mark lies within the room that there is.
    const std::array<Nm, 2> steps{shop_.graduation, shop_.graduation / 2};
    return best_on(steps, site, choice, wanted);
}

int LapLayouts::count_on_half_marks(const LapSite& site,
                                    const FastenerChoice& choice,
                                    Index wanted) {
    const std::array<Nm, 1> steps{shop_.graduation / 2};
    return best_on(steps, site, choice, wanted).layout.count;
}

LapLayout LapLayouts::best_on(std::span<const Nm> steps,
                              const LapSite& site,
                              const FastenerChoice& choice,
                              Index wanted) {
    LapLayout best;
    const bool is_rivet = choice.driver_radius == 0;
    for (const bool before_others : {false, true}) {
        if (before_others && !is_rivet) break;  // what comes apart must do so in its place
        for (const bool long_nose : {false, true}) {
            for (const bool head_on_upper : {true, false}) {
                const LapLayout way{.head_on_upper = head_on_upper,
                                    .long_nose = long_nose,
                                    .before_others = before_others};
                const auto next = attempt(site, choice, wanted, way, steps);
                if (next.layout.count == static_cast<int>(wanted)) return next;
                if (next.layout.count > best.layout.count) best = next;
            }
        }
    }
    return best;
}

LapLayout LapLayouts::attempt(const LapSite& site,
                              const FastenerChoice& choice,
                              Index wanted,
                              const LapLayout& way,
                              std::span<const Nm> steps) {
    const LapAxes axes = lap_axes(site.upper, site.lower, site.lap.normal_axis);
    const Nm edge = edge_distance(rules_, choice.diameter);
    const Region within = inside_edges(axes, site.lap, upper_wall(site), lower_wall(site), edge);
    const Nm apart = pitch(rules_, choice.diameter);

    LapLayout result = way;
    if (within.lo[0] > within.hi[0] || within.lo[1] > within.hi[1]) return result;
    gather_obstacles(site, choice, within, result);
    for (const Nm step : steps) {
        if (step <= 0) continue;
        const Marks marks = marks_for(site, choice, step, result);
        result.layout = layout_in(site, within, marks, static_cast<int>(wanted), apart, edge);
        if (result.layout.count > 0) break;
    }
    return result;
}

Layout LapLayouts::layout_in(
    const LapSite& site, const Region& within, const Marks& marks, int wanted, Nm apart, Nm edge) {
    std::vector<FlatPolygon> inside;
    const LapAxes axes = lap_axes(site.upper, site.lower, site.lap.normal_axis);
    for (const Piece* piece : {&site.upper, &site.lower, site.cover}) {
        if (piece != nullptr && leans(*piece)) inside.push_back(seen_in(axes, slants_, *piece));
    }
    if (inside.empty() && slanted_obstacles_.empty() && !has_slices_) {
        return best_layout_around(within, obstacles_, marks, wanted, apart);
    }
    const SlantedRoom room{.within = within,
                           .obstacles = obstacles_,
                           .inside = std::move(inside),
                           .edge_distance = static_cast<double>(edge),
                           .outside = slanted_obstacles_};
    return best_points(room, marks, wanted, apart);
}

void LapLayouts::gather_obstacles(const LapSite& site,
                                  const FastenerChoice& choice,
                                  const Region& within,
                                  const LapLayout& tried) {
    const LapAxes axes = lap_axes(site.upper, site.lower, site.lap.normal_axis);
    const Nm head = choice.head_radius;
    const bool is_driven = choice.driver_radius > 0;
    const Nm nose = is_driven ? choice.driver_radius : shop_.nose_radius;
    const Nm behind = is_driven || tried.long_nose ? nose : shop_.housing_radius;
    const std::array<ClearSpace, 2> tool{
        ClearSpace{0, shop_.nose_reach, std::max(nose, head)},
        ClearSpace{shop_.nose_reach, tool_length, std::max(behind, head)}};
    // What is put on later need not clear the tool, but the head; none stands out by more.
    const ClearSpace head_alone{0, choice.diameter, head};
    const ClearSpace tail{0, choice.tail_reach, choice.tail_radius};
    const std::span<const ClearSpace> tail_clear(&tail, 1);
    std::vector<const Piece*> own{&site.upper, &site.lower};
    if (site.cover != nullptr) own.push_back(site.cover);
    obstacles_.clear();
    slanted_obstacles_.clear();
    has_slices_ = false;
    const auto add = [&](std::span<const Piece* const> pieces, bool at_upper,
                         std::span<const ClearSpace> clear) {
        const Nm surface = surfaces(site)[at_upper ? 0 : 1];
        const int away = at_upper ? -site.lap.towards_lower : site.lap.towards_lower;
        add_obstacles(axes, site.lap, within, pieces, surface, away, clear, obstacles_);
        add_slanted_obstacles(axes, site.lap, within, slants_, pieces, surface, away, clear,
                              slanted_obstacles_);
        has_slices_ |= add_sliced_obstacles(axes, site.lap, within, slants_, pieces, surface, away,
                                            clear, obstacles_);
    };
    if (tried.before_others) {
        add(own, tried.head_on_upper, tool);
        add(site.near, tried.head_on_upper, {&head_alone, 1});
    } else {
        add(site.near, tried.head_on_upper, tool);
    }
    add(site.near, !tried.head_on_upper, tail_clear);
    const Nm edge = edge_distance(rules_, choice.diameter);
    add_settled(axes, site.settled, within, obstacles_);
    add_slanting_edges(axes, site.upper, upper_wall(site), edge, within, obstacles_);
    add_slanting_edges(axes, site.lower, lower_wall(site), edge, within, obstacles_);
}

}  // namespace model

#include "model/bench/blank_fit.h"
#include "model/schedule/saw_seen.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>

namespace model {
namespace {

bool is_near(Nm a, Nm b) { return std::abs(a - b) <= same_cut; }

bool is_same_place(const MadeHole& a, const MadeHole& b) {
    return a.wall == b.wall && is_near(a.from_datum, b.from_datum) && is_near(a.gauge, b.gauge);
}

bool is_countersunk(const MadeHole& hole) { return hole.operation == HoleOperation::countersink; }

bool is_same_hole(const MadeHole& a, const MadeHole& b) {
    return is_near(a.diameter, b.diameter) && a.tap == b.tap &&
           is_countersunk(a) == is_countersunk(b);
}

enum class Lies { whole, gone, cut_through };

// Where a round hole lies to the inside of a loop of straight edges.
Lies in_loop(const Corners& loop, double u, double v, double radius) {
    bool is_inside = false;
    double nearest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& from = loop[i];
        const auto& to = loop[(i + 1) % loop.size()];
        const double fu = static_cast<double>(from[0]) - u;
        const double fv = static_cast<double>(from[1]) - v;
        const double du = static_cast<double>(to[0] - from[0]);
        const double dv = static_cast<double>(to[1] - from[1]);
        const double square = du * du + dv * dv;
        const double share =
            square > 0.0 ? std::clamp(-(fu * du + fv * dv) / square, 0.0, 1.0) : 0.0;
        nearest = std::min(nearest, std::hypot(fu + share * du, fv + share * dv));
        if ((fv > 0.0) == (fv + dv > 0.0)) continue;
        if (fu - fv * du / dv > 0.0) is_inside = !is_inside;
    }
    if (nearest < radius) return Lies::cut_through;
    return is_inside ? Lies::whole : Lies::gone;
}

// How far from its long point an end may cut into a wall. In the corner that it leaves no hole is
// followed: one there counts as cut through.
Nm reach_of(const MadeEnd& end, const std::array<Nm, 2>& section) {
    double recedes = 0.0;
    for (std::size_t axis = 0; axis < 2; ++axis) {
        recedes += std::abs(static_cast<double>(end.slope[axis])) * 1.0e-9 *
                   static_cast<double>(section[axis]);
    }
    return std::max(*std::ranges::max_element(end.wall_back), static_cast<Nm>(recedes));
}

// Where a hole lies to an edge, so far inward of it, when the metal ends up to `reach` inward.
Lies at_edge(Nm inward, Nm radius, Nm reach = 0) {
    if (inward <= -radius) return Lies::gone;
    return inward >= radius + reach ? Lies::whole : Lies::cut_through;
}

Lies where_after_cutting(const BlankFit& fit, const MadePiece& wanted, const MadeHole& hole) {
    const Nm radius = hole.diameter / 2;
    if (!wanted.outline.corners.empty()) {
        const double u = static_cast<double>(hole.from_datum);
        const double v = static_cast<double>(hole.gauge);
        const double r = static_cast<double>(radius);
        const auto lies = in_loop(wanted.outline.corners, u, v, r);
        if (lies != Lies::whole) return lies;
        for (const auto& cut_out : wanted.outline.cut_outs) {
            const auto in_it = in_loop(cut_out, u, v, r);
            if (in_it == Lies::cut_through) return in_it;
            if (in_it == Lies::whole) return Lies::gone;
        }
        return Lies::whole;
    }
    Lies lies = Lies::whole;
    const auto see = [&](Lies part) {
        if (lies == Lies::gone || part == Lies::whole) return;
        lies = part;
    };
    for (std::size_t end = 0; end < 2; ++end) {
        if (fit.cut[end] == 0 && !fit.end_anew[end]) continue;
        const Nm inward = end == 0 ? hole.from_datum : wanted.length - hole.from_datum;
        see(at_edge(inward, radius, reach_of(wanted.ends[end], fit.section)));
    }
    if (fit.across[0] > 0) see(at_edge(hole.gauge, radius));
    if (fit.across[1] > 0) see(at_edge(wanted.width - hole.gauge, radius));
    return lies;
}

class Holes {
public:
    Holes(BlankFit& fit, const MadePiece& wanted) : fit_{fit}, wanted_{wanted} {
        for (std::size_t i = 0; i < fit.made.holes.size(); ++i) {
            made_.push_back(fit.after_cutting(i));
        }
        made_for_.assign(made_.size(), unused);
    }

    void compare() {
        for (const bool wants_same : {true, false}) {
            for (std::size_t i = 0; i < wanted_.holes.size(); ++i) take(i, wants_same);
        }
        for (std::size_t i = 0; i < wanted_.holes.size(); ++i) {
            const auto found = std::ranges::find(made_for_, i);
            if (found == made_for_.end()) {
                fit_.to_drill.push_back(i);
            } else {
                compare_one(static_cast<std::size_t>(found - made_for_.begin()), i);
            }
        }
        for (std::size_t i = 0; i < made_.size(); ++i) {
            if (made_for_[i] == unused) leave(i);
        }
    }

private:
    static constexpr std::size_t unused = static_cast<std::size_t>(-1);

    // The made hole at the place of a wanted one.
    void take(std::size_t wanted, bool wants_same) {
        if (std::ranges::find(made_for_, wanted) != made_for_.end()) return;
        for (std::size_t i = 0; i < made_.size(); ++i) {
            if (made_for_[i] != unused || !is_same_place(made_[i], wanted_.holes[wanted])) continue;
            if (wants_same && !is_same_hole(made_[i], wanted_.holes[wanted])) continue;
            made_for_[i] = wanted;
            return;
        }
    }

    void compare_one(std::size_t made, std::size_t wanted) {
        const auto& is = made_[made];
        const auto& to_be = wanted_.holes[wanted];
        if (is.diameter > to_be.diameter + same_cut ||
            (is_countersunk(is) && !is_countersunk(to_be))) {
            fit_.faults.push_back({FaultKind::hole_too_large, 0, made, wanted});
            return;
        }
        const bool is_larger = to_be.diameter > is.diameter + same_cut;
        if (is_larger || is_countersunk(is) != is_countersunk(to_be)) {
            fit_.to_drill_up.push_back(wanted);
        }
        if (is.tap == to_be.tap) return;
        if (!is.tap.empty() && !is_larger) {
            fit_.faults.push_back({FaultKind::hole_tapped_else, 0, made, wanted});
        } else if (!to_be.tap.empty()) {
            fit_.to_tap.push_back(wanted);
        }
    }

    // A hole that is wanted no more.
    void leave(std::size_t made) {
        const auto& hole = made_[made];
        const auto lies = where_after_cutting(fit_, wanted_, hole);
        if (lies == Lies::gone) return;
        if (lies == Lies::cut_through) {
            fit_.faults.push_back({FaultKind::hole_cut_through, 0, made, 0});
            return;
        }
        for (const auto i : fit_.to_drill) {
            if (!is_too_near(hole, wanted_.holes[i])) continue;
            fit_.faults.push_back({FaultKind::hole_too_near, 0, made, i});
            return;
        }
        fit_.left.push_back(made);
        if (!hole.is_left_open) fit_.to_leave.push_back(made);
    }

    // Less than two diameters from middle to middle, of the larger of the two: common practice.
    static bool is_too_near(const MadeHole& hole, const MadeHole& drilled) {
        if (hole.wall != drilled.wall) return false;
        const double apart = std::hypot(static_cast<double>(hole.from_datum - drilled.from_datum),
                                        static_cast<double>(hole.gauge - drilled.gauge));
        return apart < 2.0 * static_cast<double>(std::max(hole.diameter, drilled.diameter));
    }

    BlankFit& fit_;
    const MadePiece& wanted_;
    std::vector<MadeHole> made_;         // after cutting
    std::vector<std::size_t> made_for_;  // the wanted hole at its place
};

}  // namespace

void compare_holes(BlankFit& fit, const MadePiece& wanted) { Holes(fit, wanted).compare(); }

}  // namespace model

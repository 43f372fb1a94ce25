#include "model/bench/blank_fit.h"

#include "model/schedule/saw_seen.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <optional>
#include <tuple>

namespace model {
namespace {

bool is_same(Nm a, Nm b) { return std::abs(a - b) <= same_cut; }

// From where a slope recedes no more than a saw cuts across a section so wide.
bool is_same_slope(std::int64_t a, std::int64_t b, Nm across) {
    const double recedes = static_cast<double>(a - b) * 1.0e-9 * static_cast<double>(across);
    return std::abs(recedes) <= static_cast<double>(same_cut);
}

using SectionSize = std::array<Nm, 2>;  // along its axes a and b

// How far an end recedes from its long point at most.
Nm recedes_most(const MadeEnd& end, const SectionSize& section) {
    double most = 0.0;
    for (std::size_t axis = 0; axis < 2; ++axis) {
        most += std::abs(static_cast<double>(end.slope[axis])) * 1.0e-9 *
                static_cast<double>(section[axis]);
    }
    return static_cast<Nm>(most);
}

bool are_same_ends(const MadeEnd& made, const MadeEnd& wanted, const SectionSize& section) {
    for (std::size_t axis = 0; axis < 2; ++axis) {
        if (!is_same_slope(made.slope[axis], wanted.slope[axis], section[axis])) return false;
    }
    return std::ranges::equal(made.wall_back, wanted.wall_back, is_same);
}

// Whether the wanted end lies in the metal that is there, when so much is cut off.
bool has_metal_for(const MadeEnd& made, const MadeEnd& wanted, Nm cut, const SectionSize& section) {
    for (std::size_t wall = 0; wall < made.wall_back.size(); ++wall) {
        if (wanted.wall_back[wall] + cut < made.wall_back[wall] - same_cut) return false;
    }
    if (cut >= recedes_most(made, section)) return true;
    for (std::size_t axis = 0; axis < 2; ++axis) {
        const auto was = made.slope[axis];
        const auto is = wanted.slope[axis];
        if (was == 0 || is_same_slope(was, is, section[axis])) continue;
        const bool recedes_further = (was > 0) == (is > 0) && std::abs(is) > std::abs(was);
        if (!recedes_further) return false;
    }
    return true;
}

// Whether a point lies in a convex outline, or beside it by no more than a saw cuts.
bool holds(const Corners& convex, const std::array<Nm, 2>& point) {
    for (std::size_t i = 0; i < convex.size(); ++i) {
        const auto& from = convex[i];
        const auto& to = convex[(i + 1) % convex.size()];
        const double u = static_cast<double>(to[0] - from[0]);
        const double v = static_cast<double>(to[1] - from[1]);
        const double side = u * static_cast<double>(point[1] - from[1]) -
                            v * static_cast<double>(point[0] - from[0]);
        if (side < -static_cast<double>(same_cut) * std::hypot(u, v)) return false;
    }
    return true;
}

bool is_convex(const Corners& corners) {
    return std::ranges::all_of(corners, [&](const auto& corner) { return holds(corners, corner); });
}

Outline moved(Outline outline, Nm along, Nm across) {
    const auto move = [&](Corners& corners) {
        for (auto& corner : corners) corner = {corner[0] - along, corner[1] - across};
    };
    move(outline.corners);
    for (auto& cut_out : outline.cut_outs) move(cut_out);
    return outline;
}

// The rectangle where there is no outline.
Outline outline_of(const MadePiece& piece, Nm width) {
    if (!piece.outline.corners.empty()) return piece.outline;
    return {.corners = {{0, 0}, {piece.length, 0}, {piece.length, width}, {0, width}}};
}

bool are_alike(const Corners& a, const Corners& b) {
    const std::size_t n = a.size();
    if (b.size() != n) return false;
    for (std::size_t first = 0; first < std::max<std::size_t>(n, 1); ++first) {
        bool is_alike = true;
        for (std::size_t i = 0; i < n && is_alike; ++i) {
            const auto& other = b[(first + i) % n];
            is_alike = is_same(a[i][0], other[0]) && is_same(a[i][1], other[1]);
        }
        if (is_alike) return true;
    }
    return false;
}

// Tries one way of turning and cutting after the other and keeps the best.
class Fitter {
public:
    Fitter(const MadePiece& wanted, const SymmetricShape& shape, bool with_holes)
        : wanted_{wanted}, shape_{shape}, section_{shape.a, shape.b}, with_holes_{with_holes} {}

    void try_turn(const MadePiece& made, const Symmetry& turn) {
        is_first_turn_ = !best_;
        BlankFit fit{.turn = turn, .section = section_, .made = turned(made, shape_, turn)};
        const Nm off = fit.made.length - wanted_.length;
        const Nm off_across = shape_.is_sheet ? fit.made.width - wanted_.width : 0;
        if (off < -same_cut) fit.faults.push_back({FaultKind::too_short, -off});
        if (off_across < -same_cut) fit.faults.push_back({FaultKind::too_narrow, -off_across});
        if (!fit.faults.empty()) return keep(std::move(fit));
        for (const Nm along : shares(fit.made, off)) {
            for (const Nm across : shares_across(off_across)) {
                try_cuts(fit, {along, off - along}, {across, off_across - across});
            }
        }
    }

    BlankFit best() && { return std::move(*best_); }

private:
    // What may be cut off the datum end: nothing, all, and what brings most holes to their place.
    std::vector<Nm> shares(const MadePiece& made, Nm off) const {
        if (off <= same_cut) return {0};
        std::vector<Nm> shares{0, off};
        if (!with_holes_) return shares;
        std::map<Nm, int> votes;
        for (const auto& hole : made.holes) {
            for (const auto& wanted : wanted_.holes) {
                const Nm shift = hole.from_datum - wanted.from_datum;
                if (hole.wall == wanted.wall && shift > same_cut && shift < off - same_cut)
                    ++votes[shift];
            }
        }
        constexpr int most_tried = 4;
        for (int i = 0; i < most_tried && !votes.empty(); ++i) {
            const auto most =
                std::ranges::max_element(votes, {}, [](const auto& vote) { return vote.second; });
            shares.push_back(most->first);
            votes.erase(most);
        }
        return shares;
    }

    static std::vector<Nm> shares_across(Nm off) {
        if (off <= same_cut) return {0};
        return {0, off};
    }

    void try_cuts(BlankFit fit, std::array<Nm, 2> cut, std::array<Nm, 2> across) {
        for (auto* pair : {&cut, &across}) {
            for (Nm& off : *pair) off = off > same_cut ? off : 0;
        }
        fit.cut = cut;
        fit.across = across;
        compare_ends(fit);
        compare_outlines(fit);
        if (with_holes_) {
            compare_holes(fit, wanted_);
            if (is_drilled_elsewhere(fit)) fit.faults.push_back({FaultKind::drilled_elsewhere});
        }
        keep(std::move(fit));
    }

    // Turned or cut at its datum end only to be drilled all over again, it would be no piece that
    // is reworked.
    bool is_drilled_elsewhere(const BlankFit& fit) const {
        const bool as_it_was = is_first_turn_ && fit.cut[0] == 0 && fit.across[0] == 0;
        return !as_it_was && !fit.made.holes.empty() && !fit.to_drill.empty() &&
               fit.to_drill.size() == wanted_.holes.size();
    }

    void compare_ends(BlankFit& fit) const {
        for (std::size_t end = 0; end < 2; ++end) {
            const auto& made = fit.made.ends[end];
            const auto& wanted = wanted_.ends[end];
            if (fit.cut[end] == 0 && are_same_ends(made, wanted, section_)) continue;
            if (!has_metal_for(made, wanted, fit.cut[end], section_)) {
                fit.faults.push_back({.kind = FaultKind::other_end, .at = end});
            } else {
                fit.end_anew[end] = fit.cut[end] == 0;
            }
        }
    }

    void compare_outlines(BlankFit& fit) const {
        const bool has_any = !fit.made.outline.corners.empty() || !wanted_.outline.corners.empty();
        if (!has_any) return;
        const Nm made_width = shape_.is_sheet ? fit.made.width : shape_.a;
        const Nm wanted_width = shape_.is_sheet ? wanted_.width : shape_.a;
        const auto made = moved(outline_of(fit.made, made_width), fit.cut[0], fit.across[0]);
        const auto wanted = outline_of(wanted_, wanted_width);
        const bool is_far_same = model::are_alike(fit.made.outline_far, wanted_.outline_far);
        if (is_far_same && model::are_alike(made, wanted)) return;
        // One that is bevelled is not followed through the metal.
        const bool has_far =
            !fit.made.outline_far.corners.empty() || !wanted_.outline_far.corners.empty();
        const bool is_inside = !has_far && made.cut_outs.empty() && is_convex(made.corners) &&
                               std::ranges::all_of(wanted.corners, [&](const auto& corner) {
                                   return holds(made.corners, corner);
                               });
        if (is_inside) {
            fit.outline_anew = true;
        } else {
            fit.faults.push_back({.kind = FaultKind::other_outline});
        }
    }

    static auto cost(const BlankFit& fit) {
        std::size_t cuts = 0;
        for (std::size_t i = 0; i < 2; ++i) {
            if (fit.cut[i] > 0 || fit.end_anew[i]) ++cuts;
            if (fit.across[i] > 0) ++cuts;
        }
        if (fit.outline_anew) ++cuts;
        const std::size_t holes = fit.to_drill.size() + fit.to_drill_up.size() + fit.to_tap.size();
        Nm amount = 0;
        for (const auto& fault : fit.faults) amount += fault.amount;
        return std::tuple(fit.faults.size(), amount, holes, cuts, fit.to_leave.size());
    }

    void keep(BlankFit fit) {
        if (!best_ || cost(fit) < cost(*best_)) best_ = std::move(fit);
    }

    const MadePiece& wanted_;
    SymmetricShape shape_;
    SectionSize section_{};
    bool with_holes_;
    bool is_first_turn_ = true;
    std::optional<BlankFit> best_;
};

// What no saw mends.
std::vector<Fault> faults_of_stuff(const MadePiece& made, const MadePiece& wanted) {
    std::vector<Fault> faults;
    if (made.section != wanted.section) faults.push_back({.kind = FaultKind::other_section});
    if (made.alloy != wanted.alloy) faults.push_back({.kind = FaultKind::other_alloy});
    if (made.section.empty() && wanted.section.empty() &&
        !is_same(made.thickness, wanted.thickness)) {
        faults.push_back({.kind = FaultKind::other_thickness});
    }
    return faults;
}

}  // namespace

bool BlankFit::is_cut() const {
    const auto any = [](const std::array<Nm, 2>& off) { return off[0] > 0 || off[1] > 0; };
    return any(cut) || any(across) || end_anew[0] || end_anew[1] || outline_anew;
}

bool BlankFit::is_right() const {
    return faults.empty() && !is_cut() && !is_drilled() && to_leave.empty();
}

MadeHole BlankFit::after_cutting(std::size_t hole) const {
    MadeHole after = made.holes[hole];
    after.from_datum -= cut[0];
    after.gauge -= across[0];
    return after;
}

bool are_alike(const Outline& a, const Outline& b) {
    if (!are_alike(a.corners, b.corners) || a.cut_outs.size() != b.cut_outs.size()) return false;
    std::vector<bool> is_taken(b.cut_outs.size(), false);
    return std::ranges::all_of(a.cut_outs, [&](const Corners& cut_out) {
        for (std::size_t i = 0; i < b.cut_outs.size(); ++i) {
            if (is_taken[i] || !are_alike(cut_out, b.cut_outs[i])) continue;
            is_taken[i] = true;
            return true;
        }
        return false;
    });
}

BlankFit blank_fit(const Catalogue& catalogue,
                   const MadePiece& made,
                   const MadePiece& wanted,
                   bool with_holes) {
    BlankFit none{.made = made, .faults = faults_of_stuff(made, wanted)};
    if (!none.faults.empty()) return none;
    const auto shape = shape_of(catalogue, made);
    if (!shape) {
        none.faults.push_back({.kind = FaultKind::other_section});
        return none;
    }
    Fitter fitter(wanted, *shape, with_holes);
    for (const auto& turn : turns_of(*shape, made, wanted.is_right_handed)) {
        fitter.try_turn(made, turn);
    }
    return std::move(fitter).best();
}

}  // namespace model

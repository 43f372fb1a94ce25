// Ties: what runs on from an inner corner of the notch, so that its edges hang together with the
// rest of the frame.
#include "model/project/step_over_edges.h"

#include <algorithm>
#include <cstdlib>

namespace model {

namespace {

Sense turned(Sense sense) { return sense == Sense::plus ? Sense::minus : Sense::plus; }

// A point where a re-entrant edge meets a wall.
struct InnerCorner {
    const Member& root;
    const Wall& wall;
    std::array<Axis, 2> axis;  // across the root's run
    std::array<Nm, 2> at;
};

class Ties {
public:
    Ties(const Stepping& it, const std::vector<Member>& members) : it_{it}, members_{members} {
        for (const Member& member : members) lines_.push_back(line_of(member, it.layout));
    }

    std::vector<Member> find() {
        for (const Member& member : members_) {
            if (member.seat == Seat::root && is_of_notch(member)) at_walls(member);
        }
        return std::move(found_);
    }

private:
    bool is_of_notch(const Member& root) const {
        const auto axes = across(root.run);
        for (std::size_t i = 0; i < 2; ++i) {
            const auto& sides = it_.notch.plane[index_of(axes[i])];
            if (root.on[i] != sides[0] && root.on[i] != sides[1]) return false;
        }
        return true;
    }

    void at_walls(const Member& root) {
        const MemberLine line = line_of(root, it_.layout);
        for (const Wall& wall : it_.walls) {
            if (wall.axis != index_of(root.run) || !wall.is_wall()) continue;
            if (wall.at < line.from || wall.at > line.to) continue;
            const InnerCorner corner{root, wall, across(root.run), line.on};
            if (is_inside(corner)) tie(corner);
        }
    }

    // Whether the wall goes on all round the corner but for the notch.
    static bool is_inside(const InnerCorner& corner) {
        for (std::size_t i = 0; i < 2; ++i) {
            const std::size_t axis = index_of(corner.axis[i]);
            if (corner.at[i] <= corner.wall.extents.lo[axis]) return false;
            if (corner.at[i] >= corner.wall.extents.hi[axis]) return false;
        }
        return true;
    }

    // Level ones rather than upright ones, as a shelf would lie there; to the rim of the wall
    // rather than to what stands within it, which is set in so far that the other end would want a
    // shim.
    void tie(const InnerCorner& corner) {
        for (const bool to_rim : {true, false}) {
            if (!to_rim && !is_ring(corner)) return;
            for (const bool is_upright : {false, true}) {
                for (std::size_t i = 0; i < 2; ++i) {
                    if ((corner.axis[i] == Axis::z) != is_upright) continue;
                    if (tie_along(corner, i, to_rim)) return;
                }
            }
        }
    }

    // Whether the notch is a hole in the wall, so that its edges hang together by ties alone.
    bool is_ring(const InnerCorner& corner) const {
        return std::ranges::all_of(corner.axis, [&](Axis axis) {
            return it_.notch.is_closed(index_of(axis), 0) && it_.notch.is_closed(index_of(axis), 1);
        });
    }

    bool tie_along(const InnerCorner& corner, std::size_t i, bool to_rim) {
        const Axis run = corner.axis[i];
        const Sense away = turned(corner.root.legs[i]);
        const Sense wall_side = side_of(it_, corner.wall, run);
        const auto end = next_member(corner, i, away, wall_side);
        if (!end || (to_rim && !is_at_rim(corner.wall, index_of(run), *end))) return false;
        const std::string here = corner.root.on[i];
        const std::string there = plane_at(it_, index_of(run), *end);
        Member tie{.run = run,
                   .from = away == Sense::plus ? here : there,
                   .to = away == Sense::plus ? there : here,
                   .rank = rank_of_ties};
        const auto axes = across(run);
        for (std::size_t k = 0; k < 2; ++k) {
            const bool is_wall = index_of(axes[k]) == corner.wall.axis;
            tie.on[k] = is_wall ? corner.wall.plane : corner.root.on[1 - i];
            tie.legs[k] = is_wall ? wall_side : corner.root.legs[1 - i];
        }
        if (!is_there(tie)) found_.push_back(std::move(tie));
        return true;
    }

    // Whether a member lies along the tie's line already.
    bool is_there(const Member& tie) const {
        const MemberLine line = line_of(tie, it_.layout);
        return std::ranges::any_of(lines_, [&](const MemberLine& other) {
            return other.run == line.run && other.on == line.on && other.from < line.to &&
                   line.from < other.to;
        });
    }

    static bool is_at_rim(const Wall& wall, std::size_t axis, Nm at) {
        return at == wall.extents.lo[axis] || at == wall.extents.hi[axis];
    }

    // Where the tie meets the next member on the wall, if that one's leg there comes towards it.
    std::optional<Nm> next_member(const InnerCorner& corner,
                                  std::size_t i,
                                  Sense away,
                                  Sense wall_side) const {
        std::optional<Nm> nearest;
        bool laps = false;
        for (const MemberLine& line : lines_) {
            if (line.run != corner.axis[1 - i]) continue;
            const auto axes = across(line.run);
            const std::size_t own = index_of(axes[0]) == corner.wall.axis ? 0 : 1;
            if (line.on[own] != corner.wall.at || line.inward[own] != wall_side) continue;
            const Nm at = line.on[1 - own];
            const Nm distance = (at - corner.at[i]) * sign_of(away);
            if (distance <= 0 || corner.at[1 - i] < line.from || corner.at[1 - i] > line.to) {
                continue;
            }
            const bool comes = line.legs[1 - own] != away;
            if (nearest && std::abs(*nearest - corner.at[i]) < distance) continue;
            laps = nearest == at ? laps || comes : comes;
            nearest = at;
        }
        return laps ? nearest : std::nullopt;
    }

    const Stepping& it_;
    const std::vector<Member>& members_;
    std::vector<MemberLine> lines_;
    std::vector<Member> found_;
};

}  // namespace

std::vector<Member> ties_of_notch(const Stepping& it, const std::vector<Member>& members) {
    return Ties(it, members).find();
}

}  // namespace model

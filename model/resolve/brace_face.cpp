#include "model/resolve/brace_face.h"

#include <algorithm>

namespace model {
namespace {

bool lies_on(const Bar& bar, const BraceLine& line) {
    if (index_of(bar.run) == line.normal) return false;
    return bar.line[across_index(bar, line.normal)] == line.face;
}

int inward_of(const Bar& bar, const BraceLine& line) {
    return bar.inward[across_index(bar, line.normal)];
}

// Into the frame as most of the members on the face have it; 0: there are none.
int inward_of_face(const BraceLine& line, const FrameSkeleton& s) {
    int sum = 0;
    bool are_any = false;
    for (const auto& bar : s.bars) {
        if (!lies_on(bar, line) || bar.piece_count == 0) continue;
        sum += inward_of(bar, line);
        are_any = true;
    }
    if (!are_any) return 0;
    return sum >= 0 ? 1 : -1;
}

// The side of a wall that looks out of the frame, or into it.
Nm side_of(const Box& box, std::size_t normal, int inward, FaceSide side) {
    const bool at_least = (inward > 0) == (side == FaceSide::outside);
    return at_least ? box.lo[normal] : box.hi[normal];
}

// Outside the wall in the face, inside too; of a tube the one on its far side.
const Plate* wall_of(const Bar& bar, const Piece& piece, const BraceLine& line) {
    const auto primary = bar.shape->primary[section_axis(bar, across_index(bar, line.normal))];
    if (primary < 0) return nullptr;
    const Plate* own = &piece.plates[static_cast<std::size_t>(primary)];
    if (line.side == FaceSide::outside || !bar.shape->is_closed) return own;
    for (const auto& plate : piece.walls()) {
        if (!plate.is_root_fillet && plate.normal_axis == line.normal && &plate != own) {
            return &plate;
        }
    }
    return nullptr;
}

void collect_members(BraceFace& face, const BraceLine& line, const FrameSkeleton& s) {
    for (Index p = 0; p < s.pieces.size(); ++p) {
        if (s.bar_of[p] == no_index) continue;
        const Bar& bar = s.bars[s.bar_of[p]];
        if (!lies_on(bar, line) || inward_of(bar, line) != face.inward) continue;
        const Plate* wall = wall_of(bar, s.pieces[p], line);
        if (wall == nullptr) continue;
        face.walls.push_back({p, wall->wall, wall->box,
                              side_of(wall->box, line.normal, face.inward, line.side), true});
    }
}

// Parts that lap a member's wall on the side of the brace.
void collect_parts(BraceFace& face,
                   const BraceLine& line,
                   const FrameSkeleton& s,
                   std::span<const Lap> laps) {
    const std::size_t members = face.walls.size();
    const auto is_member = [&](Index piece) {
        return std::any_of(face.walls.begin(),
                           face.walls.begin() + static_cast<std::ptrdiff_t>(members),
                           [&](const FaceWall& wall) { return wall.piece == piece; });
    };
    for (const auto& lap : laps) {
        if (lap.normal_axis != line.normal) continue;
        for (const bool upper : {true, false}) {
            const Index part = upper ? lap.upper : lap.lower;
            if (s.bar_of[part] != no_index || !is_member(upper ? lap.lower : lap.upper)) continue;
            const auto wall = upper ? lap.upper_wall : lap.lower_wall;
            const Box& box = s.pieces[part].plates[wall].box;
            face.walls.push_back(
                {part, wall, box, side_of(box, line.normal, face.inward, line.side), false});
        }
    }
}

// ---- ends ---------------------------------------------------------------------------------------

// How the axes of the face run from a node towards the other one.
struct SeenFromNode {
    const BraceLine& line;
    std::size_t end = 0;

    int sense(std::size_t k) const { return line.nodes[1 - end][k] > line.nodes[end][k] ? 1 : -1; }
    // Inward places of the box's two edges along an axis of the face, the outer one first.
    std::array<Nm, 2> edges(const Box& box, std::size_t k) const {
        const std::size_t axis = line.axes[k];
        const Nm lo = (box.lo[axis] - line.nodes[end][k]) * sense(k);
        const Nm hi = (box.hi[axis] - line.nodes[end][k]) * sense(k);
        return {std::min(lo, hi), std::max(lo, hi)};
    }
};

Box member_body(const FrameSkeleton& s, const Bar& bar) {
    Box all = s.pieces[bar.first_piece].extents;
    for (Index i = 1; i < bar.piece_count; ++i) {
        all = engine::hull(all, s.pieces[bar.first_piece + i].extents);
    }
    return all;
}

// Whether the member stands at the node: on its line, or in its metal.
bool stands_at(const SeenFromNode& seen, const Box& body, const Bar& bar, Nm reach) {
    for (std::size_t k = 0; k < 2; ++k) {
        const auto edges = seen.edges(body, k);
        const bool is_along = index_of(bar.run) == seen.line.axes[k];
        const bool is_on_line = !is_along && bar.line[across_index(bar, seen.line.axes[k])] ==
                                                 seen.line.nodes[seen.end][k];
        // Ends are held back from their nodes by what lies outside of them.
        const Nm slack = is_along ? reach : 0;
        if (!is_on_line && (edges[0] > slack || edges[1] < -slack)) return false;
    }
    return true;
}

EndLimits limits_at(const SeenFromNode& seen, const BraceFace& face, const FrameSkeleton& s) {
    EndLimits across;  // by members that run the other way
    EndLimits along;   // by their ends, where there are none of those
    const auto bound = [](std::optional<Nm>& limit, Nm edge) {
        limit = limit ? std::min(*limit, edge) : edge;
    };
    for (const auto& bar : s.bars) {
        if (bar.piece_count == 0 || !lies_on(bar, seen.line)) continue;
        if (inward_of(bar, seen.line) != face.inward) continue;
        const Box body = member_body(s, bar);
        if (!stands_at(seen, body, bar, seen.line.width)) continue;
        for (std::size_t k = 0; k < 2; ++k) {
            const Nm outer = seen.edges(body, k)[0];
            bound(index_of(bar.run) == seen.line.axes[k] ? along[k] : across[k], outer);
        }
    }
    return {across[0] ? across[0] : along[0], across[1] ? across[1] : along[1]};
}

}  // namespace

std::optional<BraceFace> brace_face(const BraceLine& line,
                                    const FrameSkeleton& s,
                                    std::span<const Lap> laps) {
    BraceFace face{.inward = inward_of_face(line, s), .walls = {}};
    if (face.inward == 0) return std::nullopt;
    collect_members(face, line, s);
    collect_parts(face, line, s, laps);
    return face;
}

std::array<EndLimits, 2> outline_limits(const BraceLine& line,
                                        const BraceFace& face,
                                        const FrameSkeleton& s) {
    return {limits_at({line, 0}, face, s), limits_at({line, 1}, face, s)};
}

bool clear_ends(std::array<EndLimits, 2>& limits,
                const BraceLine& line,
                const FrameSkeleton& s,
                const Slants& slants,
                const engine::BoxTree& tree,
                const FlatPolygon& polygon,
                const Box& slab,
                Nm gap) {
    const auto slope = slope_of(line);
    // What stands further from a node than this is no matter of its end.
    const Nm reach = 2 * line.width;
    bool is_changed = false;
    const auto clear = [&](std::size_t end, const Box& box) {
        const SeenFromNode seen{line, end};
        const auto edges_0 = seen.edges(box, 0);
        const auto edges_1 = seen.edges(box, 1);
        if (edges_0[0] > reach || edges_1[0] > reach) return;
        const std::array<Nm, 2> inner{edges_0[1] + gap, edges_1[1] + gap};
        const bool by_first =
            static_cast<double>(inner[0]) / slope[0] < static_cast<double>(inner[1]) / slope[1];
        const std::size_t k = by_first ? 0 : 1;
        if (inner[k] > reach || (limits[end][k] && *limits[end][k] >= inner[k])) return;
        limits[end][k] = inner[k];
        is_changed = true;
    };
    std::vector<Index> found;
    tree.for_each_touching(slab, [&](Index piece) { found.push_back(piece); });
    std::sort(found.begin(), found.end());
    for (const Index piece : found) {
        for (const auto& box : boxes_of(slants, s.pieces[piece])) {
            if (!engine::overlaps(slab, box)) continue;
            const auto common = common_polygon(polygon, rectangle(box, line.axes));
            if (area_of(common) < least_area) continue;
            clear(0, box);
            clear(1, box);
        }
    }
    return is_changed;
}

}  // namespace model

#include "model/book/corner_view.h"

#include "engine/geometry/vectors.h"
#include "model/book/piece_bodies.h"
#include "model/resolve/piece_place.h"

#include <algorithm>
#include <cmath>

namespace model {
namespace {

constexpr double round_it = 4.0;  // mm of the thing that is shown round what matters

std::vector<Index> pieces_at(const Resolved& resolved, Index joint, const Fastener& fastener) {
    std::vector<Index> pieces;
    for (const auto& side : corner_sides(resolved, joint)) pieces.push_back(side.piece);
    const auto& it = resolved.joints[joint];
    for (const Index more : {it.shim, it.brace})
        if (more < resolved.pieces.size()) pieces.push_back(more);
    for (std::size_t k = 0; k < fastener.stack_count; ++k)
        if (std::ranges::find(pieces, fastener.stack[k].piece) == pieces.end())
            pieces.push_back(fastener.stack[k].piece);
    return pieces;
}

CutFaces faces_of(const Resolved& resolved, Index piece, const CornerCut& cut, int drive) {
    std::vector<BodyOfPiece> bodies;
    append_piece_bodies(bodies, resolved, piece);
    CutFaces faces;
    for (const auto& it : bodies) {
        auto face = cut_through(it.body, cut);
        // Up is against the drive.
        for (auto& p : face) p[1] *= -drive;
        if (face.size() > 2) faces.push_back(std::move(face));
    }
    return faces;
}

// Across, the piece that lies outside, as far as it is no longer than a hand; along the fastener,
// the stack and the beginning of what stands off it.
SeenBounds window_of(const CutFaces& outer, const BodyShape& shape, Nm grip) {
    const double round = std::max({in_mm(shape.head_radius), in_mm(shape.tail_radius), 8.0});
    const double up = in_mm(shape.head_height);
    const double down = in_mm(grip + shape.tail_length);
    SeenBounds window{{-round, -down}, {round, up}};
    for (const auto& face : outer) {
        for (const auto& p : face) {
            const double across = std::abs(p[0]) > 40.0 ? std::copysign(18.0, p[0]) : p[0];
            window.lo[0] = std::min(window.lo[0], across);
            window.hi[0] = std::max(window.hi[0], across);
            window.lo[1] = std::min(window.lo[1], std::max(p[1], -down - 8.0));
            window.hi[1] = std::max(window.hi[1], std::min(p[1], up + 8.0));
        }
    }
    for (std::size_t i = 0; i < 2; ++i) {
        window.lo[i] -= round_it;
        window.hi[i] += round_it;
    }
    return window;
}

}  // namespace

CornerView corner_view(const Catalogue& catalogue, const Resolved& resolved, Index joint) {
    CornerView view;
    view.cut = corner_cut(resolved, joint);
    const auto& fastener = resolved.fasteners[view.cut.fastener];
    for (const Index piece : pieces_at(resolved, joint, fastener))
        view.pieces.push_back(faces_of(resolved, piece, view.cut, fastener.drive));
    const Nm last = fastener.stack[fastener.stack_count - 1U].thickness;
    view.shape = body_shape(catalogue, fastener.spec, fastener.grip, last);
    view.window = window_of(view.pieces.front(), view.shape, fastener.grip);
    return view;
}

std::optional<double> edge_shown(const CornerView& view,
                                 const Resolved& resolved,
                                 const CornerSide& side,
                                 Length distance) {
    const Nm at = resolved.fasteners[view.cut.fastener].at[view.cut.across];
    double sense = 1.0;
    for (const auto& plate : resolved.pieces[side.piece].walls()) {
        if (plate.is_root_fillet || plate.wall != side.wall) continue;
        sense = at - plate.box.lo[view.cut.across] == distance.nm() ? -1.0 : 1.0;
    }
    const double edge = sense * distance.mm();
    if (edge < view.window.lo[0] || edge > view.window.hi[0]) return std::nullopt;
    return edge;
}

EdgeDistances edge_distances_shown(const Catalogue& catalogue,
                                   const Resolved& resolved,
                                   Index joint) {
    auto distances = edge_distances_drawn(resolved, joint);
    const auto view = corner_view(catalogue, resolved, joint);
    const auto sides = corner_sides(resolved, joint);
    for (std::size_t k = 0; k < 2; ++k) {
        if (distances[k] && !edge_shown(view, resolved, sides[k], *distances[k]))
            distances[k].reset();
    }
    return distances;
}

}  // namespace model

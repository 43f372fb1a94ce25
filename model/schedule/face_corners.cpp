#include "model/schedule/face_corners.h"

#include "model/resolve/bay_box.h"
#include "model/schedule/square.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace model {

FaceCorners::FaceCorners(const Frame& frame, const Resolved& resolved, const ResolvedFrame& placed)
    : frame_{frame}, placed_{placed} {
    const Index end = placed.first_piece + placed.piece_count;
    for (Index i = placed.first_piece; i < end; ++i) {
        const auto& piece = resolved.pieces[i];
        if (piece.kind != PieceKind::bar || piece.lean != no_index) continue;
        bars_.push_back(&piece);
        for (const auto& wall : piece.walls()) {
            const std::size_t n = wall.normal_axis;
            if (!wall.is_root_fillet) hair_ = std::max(hair_, wall.box.hi[n] - wall.box.lo[n]);
        }
    }
    hair_ += resolved.shop.end_gap;
}

std::optional<SideOfBay> FaceCorners::measurable(std::size_t axis,
                                                 Nm at,
                                                 const SideOfBay& side) const {
    if (is_measurable(axis, at, side)) return side;
    std::optional<SideOfBay> best;
    for (const auto& other : with_another_plane(axis, side)) {
        const double shared = shared_area(side, other);
        if (2.0 * shared < area_of(other) || !is_measurable(axis, at, other)) continue;
        if (!best || shared > shared_area(side, *best)) best = other;
    }
    return best;
}

bool FaceCorners::is_at_edge(const Piece& bar, std::size_t axis, Nm at) const {
    return std::abs(bar.extents.lo[axis] - at) <= hair_ ||
           std::abs(bar.extents.hi[axis] - at) <= hair_;
}

bool FaceCorners::reaches(const Piece& bar, std::size_t axis, Nm at) const {
    return bar.extents.lo[axis] - hair_ <= at && at <= bar.extents.hi[axis] + hair_;
}

// A bar that ends on the plane has a corner there; else two that run along it meet in one.
bool FaceCorners::has_corner(std::size_t axis, const Point& at) const {
    bool runs_along[2] = {false, false};
    for (const auto* bar : bars_) {
        const std::size_t run = index_of(bar->run);
        bool is_here = run == axis || reaches(*bar, run, at[run]);
        for (std::size_t k = 0; k < 3; ++k)
            is_here = is_here && ((k == run && k != axis) || is_at_edge(*bar, k, at[k]));
        if (!is_here) continue;
        if (run == axis) return true;
        runs_along[run == index_of(across(static_cast<Axis>(axis))[0]) ? 0 : 1] = true;
    }
    return runs_along[0] && runs_along[1];
}

bool FaceCorners::is_measurable(std::size_t axis, Nm plane, const SideOfBay& side) const {
    if (!do_diagonals_tell({side.span[0][1] - side.span[0][0], side.span[1][1] - side.span[1][0]}))
        return false;
    const auto others = across(static_cast<Axis>(axis));
    for (const Nm u : side.span[0]) {
        for (const Nm v : side.span[1]) {
            Point at{};
            at[axis] = plane;
            at[index_of(others[0])] = u;
            at[index_of(others[1])] = v;
            if (!has_corner(axis, at)) return false;
        }
    }
    return true;
}

std::vector<SideOfBay> FaceCorners::with_another_plane(std::size_t axis,
                                                       const SideOfBay& side) const {
    std::vector<SideOfBay> all;
    const auto others = across(static_cast<Axis>(axis));
    for (const auto& plane : frame_.planes) {
        for (std::size_t k = 0; k < 2; ++k) {
            const auto at = plane_position(frame_, placed_, plane.name, others[k]);
            for (std::size_t end = 0; at && end < 2; ++end) {
                SideOfBay other = side;
                other.span[k][end] = *at;
                other.planes[k][end] = plane.name;
                if (other.span[k][0] < other.span[k][1]) all.push_back(std::move(other));
            }
        }
    }
    return all;
}

}  // namespace model

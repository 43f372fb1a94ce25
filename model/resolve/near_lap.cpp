#include "model/resolve/near_lap.h"

#include "model/resolve/lap_room.h"
#include "model/resolve/shim_room.h"

namespace model {
namespace {

// Whether it is the shim of that very lap.
bool is_own_shim(const Box& shim, const Lap& lap) {
    return lap.is_of_brace && lap.gap > 0 && shim == gap_box(lap);
}

}  // namespace

void NearLap::expect_shim_under_brace(const Lap& lap) {
    brace_shims_.push_back(shim_piece(lap, 0));
}

void NearLap::add_shim(const Lap& lap) { shims_.push_back(shim_piece(lap, 0)); }

void NearLap::note_settled(const Lap& lap, const Layout& layout) {
    if (layout.pattern != Pattern::points) return;
    const LapAxes axes = lap_axes(pieces_[lap.upper], pieces_[lap.lower], lap.normal_axis);
    const Nm apart = layout.apart * layout.marks.step;
    for (const auto& centre : layout.points) {
        Piece post{.kind = PieceKind::shim};
        Box box = lap.rect;
        box.lo[lap.normal_axis] -= Length::nm_per_inch;
        box.hi[lap.normal_axis] += Length::nm_per_inch;
        for (std::size_t k = 0; k < 2; ++k) {
            const std::size_t axis = axes.axis[k];
            const Nm at = axes.heel[axis] + axes.sense[k] * centre[k];
            box.lo[axis] = at - apart;
            box.hi[axis] = at + apart;
        }
        post.plates[0] = {.box = box, .normal_axis = lap.normal_axis};
        post.extents = box;
        post.plate_count = 1;
        settled_.push_back(post);
    }
}

std::span<const Piece* const> NearLap::pieces(const Lap& lap) {
    const auto around = surroundings_.of(lap);
    settled_beside_.clear();
    if (shims_.empty() && brace_shims_.empty() && settled_.empty()) return around;
    near_brace_.assign(around.begin(), around.end());
    const Box reach = tool_reach(lap, shop_);
    const auto add = [&](const Piece& piece) {
        if (engine::touches(reach, piece.extents)) near_brace_.push_back(&piece);
    };
    for (const auto& shim : brace_shims_) {
        if (!is_own_shim(shim.extents, lap)) add(shim);
    }
    if (!lap.is_of_brace) return near_brace_;
    for (const auto& shim : shims_) add(shim);
    for (const auto& post : settled_) {
        if (post.plates[0].normal_axis != lap.normal_axis) {
            add(post);
        } else if (engine::touches(reach, post.extents)) {
            settled_beside_.push_back(post.extents);
        }
    }
    return near_brace_;
}

}  // namespace model

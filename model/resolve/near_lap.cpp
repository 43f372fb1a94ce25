#include "model/resolve/near_lap.h"

#include "model/resolve/lap_room.h"
#include "model/resolve/shim_room.h"

#include <algorithm>

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

void NearLap::note_settled(const Lap& lap,
                           const FastenerChoice& fastener,
                           bool head_on_upper,
                           const Layout& layout) {
    if (layout.pattern != Pattern::points) return;
    const Piece& upper = pieces_[lap.upper];
    const Piece& lower = pieces_[lap.lower];
    const LapAxes axes = lap_axes(upper, lower, lap.normal_axis);
    const Nm apart = layout.apart * layout.marks.step;
    Box stack = engine::hull(upper.plates[lap.upper_wall].box, lower.plates[lap.lower_wall].box);
    if (lap.cover != no_index) stack = engine::hull(stack, pieces_[lap.cover].plates[0].box);
    const bool head_is_low = head_on_upper == (lap.towards_lower > 0);
    // No head stands out by more than its radius.
    const Nm low = head_is_low ? fastener.head_radius : fastener.tail_reach;
    const Nm high = head_is_low ? fastener.tail_reach : fastener.head_radius;
    const Nm radius = std::max(fastener.head_radius, fastener.tail_radius);
    for (const auto& centre : layout.points) {
        Point at{};
        for (std::size_t k = 0; k < 2; ++k) {
            const std::size_t axis = axes.axis[k];
            at[axis] = axes.heel[axis] + axes.sense[k] * centre[k];
        }
        SettledFastener settled{.body = {.kind = PieceKind::shim}, .apart = lap.rect};
        Box body = stack;
        for (const std::size_t axis : axes.axis) {
            body.lo[axis] = at[axis] - radius;
            body.hi[axis] = at[axis] + radius;
            settled.apart.lo[axis] = at[axis] - apart;
            settled.apart.hi[axis] = at[axis] + apart;
        }
        body.lo[lap.normal_axis] -= low;
        body.hi[lap.normal_axis] += high;
        settled.body.plates[0] = {.box = body, .normal_axis = lap.normal_axis};
        settled.body.plate_count = 1;
        settled.body.extents = body;
        settled.apart.lo[lap.normal_axis] -= Length::nm_per_inch;
        settled.apart.hi[lap.normal_axis] += Length::nm_per_inch;
        settled_.push_back(settled);
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
    for (const auto& [body, apart] : settled_) {
        if (body.plates[0].normal_axis != lap.normal_axis) {
            add(body);
        } else if (engine::touches(reach, apart)) {
            settled_beside_.push_back(apart);
        }
    }
    return near_brace_;
}

}  // namespace model

#include "model/resolve/set_in.h"

#include "model/resolve/recipe_row.h"

#include <algorithm>

namespace model {
namespace {

// More rounds than any chain of shifts that changes an overlap needs; each round only adds.
constexpr int most_rounds = 8;

const SectionPlate* primary_wall(const Bar& bar, std::size_t frame_axis) {
    const int wall = bar.shape->primary[section_axis(bar, across_index(bar, frame_axis))];
    return wall < 0 ? nullptr : &bar.shape->walls[static_cast<std::size_t>(wall)];
}

bool overlap_along(const Box& a, const Box& b, std::size_t axis) {
    return a.lo[axis] < b.hi[axis] && b.lo[axis] < a.hi[axis];
}

Nm layer_behind(const Bar& bar, std::size_t frame_axis) {
    return bar.shape->layer[section_axis(bar, across_index(bar, frame_axis))];
}

bool push_behind(const Bar& upper, Bar& lower) {
    if (!share_a_face(upper, lower)) return false;
    const std::size_t axis = common_axis(upper, lower);
    const Nm needed = upper.set_in[across_index(upper, axis)] + layer_behind(upper, axis);
    Nm& now = lower.set_in[across_index(lower, axis)];
    if (now >= needed) return false;
    now = needed;
    return true;
}

}  // namespace

bool share_a_face(const Bar& a, const Bar& b) {
    const std::size_t axis = common_axis(a, b);
    const std::size_t ia = across_index(a, axis);
    const std::size_t ib = across_index(b, axis);
    if (a.line[ia] != b.line[ib] || a.inward[ia] != b.inward[ib]) return false;
    const SectionPlate* wall_a = primary_wall(a, axis);
    const SectionPlate* wall_b = primary_wall(b, axis);
    if (wall_a == nullptr || wall_b == nullptr) return false;
    const Box box_a = wall_box(a, *wall_a, a.from, a.to);
    const Box box_b = wall_box(b, *wall_b, b.from, b.to);
    return overlap_along(box_a, box_b, index_of(a.run)) &&
           overlap_along(box_a, box_b, index_of(b.run));
}

void set_in_bars(FrameSkeleton& s) {
    for (auto& bar : s.bars) bar.set_in = {};
    bool changed = true;
    for (int round = 0; changed && round < most_rounds; ++round) {
        changed = false;
        for (const Index lower : s.order) {
            const auto [first, count] = s.above[lower];
            for (Index k = first; k < first + count; ++k) {
                const Meeting& meeting = s.meetings[k];
                const Bar& upper = s.bars[meeting.upper];
                if (!recipe_row(meeting.recipe).lies_behind(upper, s.bars[lower])) continue;
                changed |= push_behind(upper, s.bars[lower]);
            }
        }
    }
}

}  // namespace model

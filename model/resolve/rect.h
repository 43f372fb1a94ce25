// Rectangles across an axis of the frame: boxes of which only the two other directions count.
#pragma once

#include "engine/geometry/box.h"

#include <cstddef>

namespace model {

using engine::Box;
using engine::Nm;

bool has_area(const Box& rect, std::size_t normal_axis);

// In nm2.
double area_of(const Box& rect, std::size_t normal_axis);

// The shorter of its two sides.
Nm short_side(const Box& rect, std::size_t normal_axis);

// The common rectangle seen along `axis`, placed at `position` on it.
Box common_rect(const Box& a, const Box& b, std::size_t axis, Nm position);

// The largest rectangle left of `rect` when `taken` is cut off from one of its four sides.
Box without(const Box& rect, const Box& taken, std::size_t normal_axis);

}  // namespace model

// Where a frame's planes lie, and so its bays.
#pragma once

#include "model/resolve/resolved.h"

#include <optional>
#include <string_view>

namespace model {

// None where there is no such plane, it lies across another axis, or its formula fails.
std::optional<Nm> plane_position(const Frame& frame,
                                 const ResolvedFrame& placed,
                                 std::string_view plane,
                                 Axis axis);

// From plane to plane, in the frame. None where a plane is missing or the bay has no size.
std::optional<Box> bay_box(const Frame& frame, const ResolvedFrame& placed, const Bay& bay);

}  // namespace model

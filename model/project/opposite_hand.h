// A frame as it would be of the opposite hand: see the edit CopyFrame.
#pragma once

#include "engine/result.h"
#include "model/project/project.h"

namespace model {

// Of a frame, along which left and right change places.
inline constexpr Axis axis_of_hand = Axis::x;

// It stands where the frame does, and is called as it is. Error: something of it has no opposite
// hand.
engine::Result<Frame> frame_of_opposite_hand(const Project& project, const Frame& frame);

}  // namespace model

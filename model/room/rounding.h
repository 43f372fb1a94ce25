// What the rounding of doubles may make of a place in a room. Only files of this folder use it.
#pragma once

namespace model {

// What enters by no more than this touches, and what is nearer by no more is as near as is wanted.
inline constexpr double rounding_mm = 1e-6;

}  // namespace model

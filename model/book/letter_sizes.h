// How large letters are on the drawings of marks and on drill strips, by what they are read for; mm
// of the font.
#pragma once

namespace model {

inline constexpr double working_letters = 5.0;  // numbers that one works from: capitals of 3.5 mm
inline constexpr double plain_letters = 3.4;    // words beside them
inline constexpr double small_letters = 3.0;    // what is looked up
inline constexpr double strip_letters = 2.8;    // on a sheet of strips, where all is at full size

}  // namespace model

// Where along a member its lengths may butt: away from mid-span, clear of all that is there.
#pragma once

#include "engine/geometry/box.h"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace model {

using engine::Nm;

struct ButtRules {
    Nm most = 0;    // that a length may have
    Nm least = 0;   // that a length must have
    Nm gap = 0;     // between one length's end and the next one's
    Nm mark = 1;    // lengths but the last are whole numbers of it
    Nm before = 0;  // from a butt (the end of the length before it) to both ends of its backing
    Nm after = 0;
};

// A range along the member.
using Range = std::array<Nm, 2>;

struct Butts {
    std::vector<Nm> ends;  // of each length but the last, rising
    double worst = 0.0;    // of all of them: how far from the nearer support, of 1 for the span
};

// A butt lies in the outer thirds of a span between two supports, as near as it can to where a
// member that runs on over its supports carries hardly any bending under an even load: about a
// fifth to a quarter of the span from either (0.21 between two fixed ends: (1 - 1 / sqrt 3) / 2;
// common practice). As few as will do; none where there is no such place, or where more than
// `most_lengths` would be needed.
inline constexpr int most_lengths = 16;

std::optional<Butts> butts_along(Range member,
                                 std::span<const Range> taken,
                                 std::span<const Nm> supports,
                                 const ButtRules& rules);

// The least number of lengths of which the member can be made.
Nm fewest_lengths(Nm length, const ButtRules& rules);

}  // namespace model

// Which unit a mesh is in, guessed from its size: most mesh files do not say.
#pragma once

#include "engine/files/scan_mesh.h"

#include <string>
#include <vector>

namespace engine {

double mm_in(LengthUnit unit);

// The longest side that a scan is expected to have, in mm. By default a room in a vehicle: inside,
// a van is some 1.5 to 5 m long (common practice, from memory).
struct ExpectedSpan {
    double least_mm = 1'500.0;
    double most_mm = 5'000.0;
};

struct UnitGuess {
    LengthUnit unit = LengthUnit::metre;
    bool fits = false;   // the longest side is as expected
    std::string reason;  // one sentence, no trailing stop

    bool operator==(const UnitGuess&) const = default;
};

// All five units, the likeliest first: those in which the longest side is as expected, in the order
// in which scanning programs use them (metres, millimetres, centimetres, inches, feet; from
// memory), then the others by how far they miss. Empty where the box has no size.
std::vector<UnitGuess> guessed_unit(const ScanPoint& lo,
                                    const ScanPoint& hi,
                                    const ExpectedSpan& expected = {});

}  // namespace engine

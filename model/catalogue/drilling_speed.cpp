#include "model/catalogue/drilling_speed.h"

#include <algorithm>
#include <cassert>

namespace model {

double metres_from_feet(double feet) {
    constexpr double metres_per_foot = 0.3048;
    return feet * metres_per_foot;
}

double drill_rpm(double metres_per_minute, engine::Length diameter, double top_rpm) {
    assert(diameter > engine::Length{});
    constexpr double pi = 3.14159265358979323846;
    constexpr double mm_per_metre = 1000.0;
    return std::min(metres_per_minute * mm_per_metre / (pi * diameter.mm()), top_rpm);
}

}  // namespace model

#include "engine/statics/torsion.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

double to_the_fourth(double x) { return x * x * x * x; }

}  // namespace

double rectangle_torsion(double long_side, double short_side) {
    constexpr double pi = 3.14159265358979323846;
    constexpr int last_term = 25;  // what is left out is below 1e-7
    double sum = 0.0;
    for (int n = 1; n <= last_term; n += 2) {
        sum += std::tanh(n * pi * long_side / (2.0 * short_side)) / std::pow(n, 5);
    }
    const double lost = 64.0 / std::pow(pi, 5) * (short_side / long_side) * sum;
    return long_side * std::pow(short_side, 3) * (1.0 / 3.0 - lost);
}

double closed_wall_torsion(double enclosed_area, double perimeter, double wall) {
    return 4.0 * enclosed_area * enclosed_area * wall / perimeter;
}

// El Darwish and Johnston, Torsion of Structural Shapes, ASCE Journal of the Structural Division
// 91 (1965), in the form of the European steel section tables (from memory): a factor times the
// fourth power of the largest circle that the corner holds.
double corner_torsion(const WallCorner& corner) {
    const double ratio = corner.thinner / corner.thicker;
    const double fillet = corner.fillet / corner.thicker;
    const double fitted = -0.0908 + 0.2621 * ratio + 0.1231 * fillet - 0.0752 * ratio * fillet -
                          0.0945 * ratio * ratio;
    // Their fit is for fillets and comes out low without one. 0.0942 was computed for equal walls
    // by finite differences (tests/engine/statics/torsion_test.cpp solves it again).
    const double factor = std::max(fitted, 0.0942 * ratio);
    const double circle = 2.0 * (3.0 * corner.fillet + corner.thinner + corner.thicker -
                                 std::sqrt(2.0 * (2.0 * corner.fillet + corner.thinner) *
                                           (2.0 * corner.fillet + corner.thicker)));
    return factor * to_the_fourth(circle);
}

// Half of what the series of a long rectangle loses against b t^3 / 3.
double wall_end_torsion(double wall) { return -0.105 * to_the_fourth(wall); }

// Fitted, within half a per cent of the whole, to finite-difference solutions of the 77 rounded
// angles of the Aluminum Design Manual, Part V (tests/engine/statics/torsion_test.cpp solves one
// again).
double rounded_toe_torsion(double wall, double radius) {
    const double ratio = radius / wall;
    return -(0.1 - 0.03 * ratio) * std::pow(ratio, 3) * to_the_fourth(wall);
}

}  // namespace engine

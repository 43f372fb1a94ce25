#include "engine/drawing/hatch_lines.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace engine;

namespace {

using Polygon = std::vector<PagePoint>;

double length_of_all(const std::vector<std::array<PagePoint, 2>>& lines) {
    double sum = 0;
    for (const auto& [a, b] : lines) sum += std::hypot(b.x - a.x, b.y - a.y);
    return sum;
}

Polygon box(double left, double top, double right, double bottom) {
    return {{left, top}, {right, top}, {right, bottom}, {left, bottom}};
}

}  // namespace

TEST_CASE("hatch lines rise to the right at their spacing", "[engine][drawing]") {
    const auto lines = hatch_lines({box(0, 0, 10, 10)}, {.spacing = std::sqrt(2.0)});
    REQUIRE(lines.size() > 5);
    for (const auto& [a, b] : lines) {
        CHECK(b.x - a.x == Approx(a.y - b.y).margin(1e-9));
        const double sum = a.x + a.y;  // each 2 mm along an edge
        CHECK(std::abs(sum / 2 - std::round(sum / 2)) < 1e-9);
    }
}

TEST_CASE("the length of hatch lines is the area over their spacing", "[engine][drawing]") {
    const double spacing = 0.25;
    const auto angle = GENERATE(0.0, 30.0, 45.0, 90.0, 135.0, -17.0);
    CAPTURE(angle);
    const Hatching hatching{.spacing = spacing, .angle_deg = angle};
    const auto covered = [&](const std::vector<Polygon>& polygons) {
        return length_of_all(hatch_lines(polygons, hatching)) * spacing;
    };
    const Polygon outside = box(0.1, 0.1, 40.1, 30.1);
    CHECK(covered({outside}) == Approx(1200.0).epsilon(0.01));
    CHECK(covered({outside, box(10.1, 10.1, 20.1, 20.1)}) == Approx(1100.0).epsilon(0.01));
    const Polygon angle_section{{5, 5}, {9, 5}, {9, 41}, {45, 41}, {45, 45}, {5, 45}};
    CHECK(covered({angle_section}) == Approx(304.0).epsilon(0.02));
}

TEST_CASE("hatch lines through corners neither leak nor break", "[engine][drawing]") {
    // Every corner lies on a line.
    const Polygon diamond{{0, 10}, {10, 0}, {20, 10}, {10, 20}};
    const auto lines = hatch_lines({diamond}, {.spacing = 5.0, .angle_deg = 0.0});
    REQUIRE(lines.size() <= 4);
    for (const auto& [a, b] : lines) {
        CHECK(std::abs(a.x - 10) + std::abs(a.y - 10) <= 10 + 1e-9);
        CHECK(std::abs(b.x - 10) + std::abs(b.y - 10) <= 10 + 1e-9);
    }
    CHECK(length_of_all(lines) == Approx(10 + 20 + 10));
}

TEST_CASE("neighbours that are hatched alike share their lines", "[engine][drawing]") {
    const Hatching hatching{.spacing = 3.0};
    const auto whole = hatch_lines({box(3, 4, 33, 14)}, hatching);
    const auto left = hatch_lines({box(3, 4, 17.3, 14)}, hatching);
    const auto right = hatch_lines({box(17.3, 4, 33, 14)}, hatching);
    CHECK(length_of_all(left) + length_of_all(right) == Approx(length_of_all(whole)));
}

TEST_CASE("nothing has no hatch", "[engine][drawing]") {
    CHECK(hatch_lines({}, {}).empty());
    CHECK(hatch_lines({{}}, {}).empty());
    CHECK(hatch_lines({{{1, 1}}}, {}).empty());
    CHECK(hatch_lines({box(5, 5, 5, 25)}, {}).empty());
}

#include "engine/statics/section_properties.h"

#include <catch2/catch.hpp>

#include <cmath>

using engine::polygon_properties;
using engine::SectionShape;

namespace {

SectionShape rectangle(double x, double y, double width, double height) {
    return {{{{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}}}};
}

// A T of two rectangles: flange 6 x 1 on top of a web 1 x 4.
SectionShape tee() {
    return {{{{2.5, 0}, {3.5, 0}, {3.5, 4}, {6, 4}, {6, 5}, {0, 5}, {0, 4}, {2.5, 4}}}};
}

SectionShape turned(const SectionShape& shape, double angle) {
    auto copy = shape;
    for (auto& loop : copy.loops) {
        for (auto& [x, y] : loop) {
            const double before = x;
            x = before * std::cos(angle) - y * std::sin(angle);
            y = before * std::sin(angle) + y * std::cos(angle);
        }
    }
    return copy;
}

}  // namespace

TEST_CASE("a rectangle has the moments of the textbook", "[engine][statics]") {
    const auto of = polygon_properties(rectangle(10, 20, 6, 2));
    CHECK(of.area == Approx(12));
    CHECK(of.centroid[0] == Approx(13));
    CHECK(of.centroid[1] == Approx(21));
    CHECK(of.ix == Approx(6.0 * 8.0 / 12.0));
    CHECK(of.iy == Approx(2.0 * 216.0 / 12.0));
    CHECK(of.ixy == Approx(0.0).margin(1e-12));
    CHECK(of.zx == Approx(6.0 * 4.0 / 4.0));
    CHECK(of.zy == Approx(2.0 * 36.0 / 4.0));
    CHECK(of.r_minor == Approx(2.0 / std::sqrt(12.0)));
}

TEST_CASE("a hole takes its own moments away", "[engine][statics]") {
    auto tube = rectangle(0, 0, 4, 4);
    tube.loops.push_back({{1, 1}, {1, 3}, {3, 3}, {3, 1}});
    const auto of = polygon_properties(tube);
    CHECK(of.area == Approx(12));
    CHECK(of.ix == Approx((256.0 - 16.0) / 12.0));
    CHECK(of.zx == Approx((64.0 - 8.0) / 4.0));
}

TEST_CASE("the plastic axis of a T lies where the areas are equal, not at the centroid",
          "[engine][statics]") {
    const auto of = polygon_properties(tee());
    CHECK(of.area == Approx(10));
    // Equal areas: 5/6 of the flange above the axis.
    const double above = 5.0 / 6.0;
    const double rest = 1.0 / 6.0;
    const double expected = 6 * above * above / 2 + 6 * rest * rest / 2 + 4 * (rest + 2);
    CHECK(of.zx == Approx(expected));
    CHECK(of.zy == Approx(36.0 / 4.0 + 4.0 / 4.0));
}

TEST_CASE("turning a section turns its principal axes and nothing else", "[engine][statics]") {
    const auto angle = GENERATE(0.1, 0.7, 1.5, -1.2);
    CAPTURE(angle);
    const auto flat = polygon_properties(rectangle(0, 0, 6, 2));
    const auto of = polygon_properties(turned(rectangle(0, 0, 6, 2), angle));
    CHECK(of.i_major == Approx(flat.iy));
    CHECK(of.i_minor == Approx(flat.ix));
    // The major axis of the flat rectangle stands upright; an axis has no direction.
    const double half_turn = std::acos(-1.0);
    const double off = std::remainder(of.major_angle - (angle + half_turn / 2), half_turn);
    CHECK(off == Approx(0.0).margin(1e-9));
}

TEST_CASE("a square has no principal axis of its own", "[engine][statics]") {
    CHECK(polygon_properties(rectangle(-1e5, 7, 3, 3)).major_angle == 0.0);
}

TEST_CASE("a far origin costs no digits", "[engine][statics]") {
    const auto of = polygon_properties(rectangle(1e6, -1e6, 3, 1));
    CHECK(of.ix == Approx(0.25).epsilon(1e-9));
    CHECK(of.zx == Approx(0.75).epsilon(1e-9));
}

TEST_CASE("no outline and an inside-out one have no properties", "[engine][statics]") {
    CHECK(polygon_properties({}).area == 0.0);
    CHECK(polygon_properties({{{{0, 0}, {0, 1}, {1, 1}, {1, 0}}}}).area == 0.0);
}

#include "model/catalogue/section_shape.h"

#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace engine::literals;
using model::Section;
using model::SectionForm;

namespace {

Section angle(engine::Length a, engine::Length b) {
    return {.form = SectionForm::angle, .a = a, .b = b, .thickness = 8_in_64};
}

double lowest_radius(const engine::SectionProperties& of) {
    return std::sqrt(of.i_minor / of.area);
}

}  // namespace

TEST_CASE("every section of the catalogue has sound properties", "[model][catalogue][shape]") {
    for (const auto& section : shipped_catalogue().sections) {
        CAPTURE(section.id);
        const auto of = model::section_properties(section);
        CHECK(of.area > 0.0);
        CHECK(of.i_minor > 0.0);
        CHECK(of.i_major >= of.i_minor);
        CHECK(of.i_major + of.i_minor == Approx(of.ix + of.iy));
        CHECK(of.r_minor == Approx(lowest_radius(of)));
        CHECK(of.j > 0.0);
        CHECK(of.j < of.ix + of.iy);  // a circle's, the largest of all shapes, is equal
        CHECK(of.zx > 0.0);
        CHECK(of.zy > 0.0);
        CHECK(of.centroid[0] > 0.0);
        CHECK(of.centroid[0] < section.a.mm());
    }
}

TEST_CASE("rounding keeps the outline inside the square-cornered section's rectangle",
          "[model][catalogue][shape]") {
    for (const auto& section : shipped_catalogue().sections) {
        CAPTURE(section.id);
        const double height =
            section.form == SectionForm::flat ? section.thickness.mm() : section.b.mm();
        constexpr double rounding = 1e-9;
        bool inside = true;
        for (const auto& loop : model::section_shape(section).loops) {
            for (const auto& [a, b] : loop) {
                inside = inside && a >= -rounding && b >= -rounding &&
                         a <= section.a.mm() + rounding && b <= height + rounding;
            }
        }
        CHECK(inside);
    }
}

TEST_CASE("a square-cornered section has the area of its walls", "[model][catalogue][shape]") {
    const auto of = model::section_properties(angle(1_in, 1_in));
    CHECK(of.area == Approx((2.0 - 0.125) * 0.125 * 25.4 * 25.4));
}

TEST_CASE("a fillet adds metal and a rounded toe takes metal away", "[model][catalogue][shape]") {
    const auto square = angle(2_in, 2_in);
    auto filleted = square;
    filleted.root_radius = 8_in_64;
    auto toed = square;
    toed.toe_radius = 4_in_64;
    const double corner = 1.0 - std::acos(-1.0) / 4.0;  // of the square of the radius
    const double area = model::section_properties(square).area;
    const double root = filleted.root_radius.mm();
    const double toe = toed.toe_radius.mm();
    CHECK(model::section_properties(filleted).area ==
          Approx(area + corner * root * root).epsilon(1e-5));
    CHECK(model::section_properties(toed).area ==
          Approx(area - 2 * corner * toe * toe).epsilon(1e-5));
}

TEST_CASE("swapping the legs of an angle swaps its axes", "[model][catalogue][shape]") {
    const auto one = model::section_properties(angle(2_in, 1_in));
    const auto other = model::section_properties(angle(1_in, 2_in));
    CHECK(one.ix == Approx(other.iy));
    CHECK(one.zx == Approx(other.zy));
    CHECK(one.j == Approx(other.j));
    CHECK(one.cw == Approx(other.cw));
    CHECK(one.centroid[0] == Approx(other.centroid[1]));
    CHECK(one.ixy == Approx(other.ixy));
}

TEST_CASE("an angle with equal legs has its major axis across the corner",
          "[model][catalogue][shape]") {
    const auto of = model::section_properties(angle(1_in, 1_in));
    CHECK(of.ixy < 0.0);  // the heel is at the origin
    CHECK(of.major_angle == Approx(std::acos(-1.0) / 4.0));
}

TEST_CASE("a flat bar's and a tube's shear centre is the centroid", "[model][catalogue][shape]") {
    for (const auto* id : {"flat 1 x 1/8", "tube 2 x 1 x 1/8", "tube 30 x 15 x 2 mm"}) {
        CAPTURE(id);
        const auto* section = model::find_section(shipped_catalogue(), id);
        REQUIRE(section != nullptr);
        const auto of = model::section_properties(*section);
        CHECK(of.shear_centre == of.centroid);
    }
}

TEST_CASE("a channel's shear centre lies behind its web", "[model][catalogue][shape]") {
    for (const auto& section : shipped_catalogue().sections) {
        if (section.form != SectionForm::channel) continue;
        CAPTURE(section.id);
        CHECK(model::section_properties(section).shear_centre[1] < 0.0);
    }
}

// 0.234375 in2 x 0.0254^2 m2 x 2690 kg/m3, worked by hand: 0.40675 kg/m.
TEST_CASE("a metre of 1 x 1 x 1/8 angle weighs four hundred grams", "[model][catalogue][shape]") {
    const auto& catalogue = shipped_catalogue();
    const auto* section = model::find_section(catalogue, "angle 1 x 1 x 1/8");
    const auto* alloy = model::find_alloy(catalogue, "6063-T52");
    REQUIRE(section != nullptr);
    REQUIRE(alloy != nullptr);
    CHECK(model::mass_per_metre(*section, *alloy) == Approx(0.40675).epsilon(1e-4));
}

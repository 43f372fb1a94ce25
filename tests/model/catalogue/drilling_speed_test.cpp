#include "model/catalogue/drilling_speed.h"

#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

using namespace engine::literals;

TEST_CASE("a thicker drill turns slower in proportion", "[model][catalogue][drilling]") {
    const double thin = model::drill_rpm(60, 4_mm, 1e6);
    CHECK(model::drill_rpm(60, 8_mm, 1e6) == Approx(thin / 2));
}

TEST_CASE("a drill never turns faster than the tool", "[model][catalogue][drilling]") {
    const auto* aluminium = model::find_drilling_speed(shipped_catalogue(), "aluminium");
    REQUIRE(aluminium != nullptr);
    const double speed = model::metres_from_feet(aluminium->usual);
    const double top = aluminium->hand_drill_top_rpm;
    CHECK(model::drill_rpm(speed, 8_in_64, top) == top);
    CHECK(model::drill_rpm(speed, 1_in, top) < top);
}

TEST_CASE("drilling speeds rise from least to most", "[model][catalogue][drilling]") {
    for (const auto& speed : shipped_catalogue().drilling_speeds) {
        CAPTURE(speed.material);
        CHECK(speed.least > 0.0);
        CHECK(speed.least <= speed.usual);
        CHECK(speed.usual <= speed.most);
    }
}

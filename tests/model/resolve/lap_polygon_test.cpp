// Convex polygons on a face, with areas that can be done in the head.
#include "model/resolve/lap_polygon.h"

#include "model/resolve/point_layout.h"

#include <catch2/catch.hpp>

#include <cmath>

using model::FlatPolygon;

namespace {

FlatPolygon square(double from, double to) {
    return {{from, from}, {to, from}, {to, to}, {from, to}};
}

// A square on its corner.
const FlatPolygon diamond{{0.0, -100.0}, {100.0, 0.0}, {0.0, 100.0}, {-100.0, 0.0}};

}  // namespace

TEST_CASE("what two polygons share is cut along the edges of both", "[model][lap_polygon]") {
    // A square of 120 over a diamond whose corners reach 100 from the middle: the four corners of
    // the square beyond the diamond are triangles with legs of 20.
    const auto common = model::common_polygon(square(-60.0, 60.0), diamond);
    CHECK(common.size() == 8);
    CHECK(model::area_of(common) == Approx(120.0 * 120.0 - 4.0 * 20.0 * 20.0 / 2.0));
}

TEST_CASE("polygons apart share nothing", "[model][lap_polygon]") {
    CHECK(model::area_of(model::common_polygon(square(200.0, 300.0), diamond)) == 0.0);
}

TEST_CASE("the depth of a place is that to the nearest edge", "[model][lap_polygon]") {
    CHECK(model::depth_within(diamond, {0.0, 0.0}) == Approx(100.0 / std::sqrt(2.0)));
    CHECK(model::depth_within(diamond, {100.0, 0.0}) == Approx(0.0).margin(1e-9));
    CHECK(model::distance_to(diamond, {130.0, 0.0}) == Approx(30.0));
    CHECK(model::distance_to(diamond, {10.0, 10.0}) == 0.0);
}

TEST_CASE("the largest rectangle in a square on its corner has half its area",
          "[model][lap_polygon]") {
    const FlatPolygon wide{{0.0, -1e6}, {1e6, 0.0}, {0.0, 1e6}, {-1e6, 0.0}};
    const auto box = model::rectangle_within(wide, {0, 1}, 7);
    CHECK(box.hi[0] == 500'000);
    CHECK(box.lo[1] == -500'000);
    CHECK(box.lo[2] == 7);
}

TEST_CASE("places for fasteners keep the edge distance from slanting edges and the pitch",
          "[model][point_layout]") {
    const FlatPolygon wide{{0.0, -1e6}, {1e6, 0.0}, {0.0, 1e6}, {-1e6, 0.0}};
    const model::SlantedRoom room{.within = {{-1'000'000, -1'000'000}, {1'000'000, 1'000'000}},
                                  .obstacles = {},
                                  .inside = {wide},
                                  .edge_distance = 200'000.0,
                                  .outside = {}};
    const auto layout = model::best_points(room, {.step = 50'000}, 2, 300'000);
    REQUIRE(layout.count == 2);
    CHECK(layout.pattern == model::Pattern::points);
    for (const auto& at : layout.points) {
        CHECK(at[0] % 50'000 == 0);
        const double u = static_cast<double>(at[0]);
        const double v = static_cast<double>(at[1]);
        CHECK(model::depth_within(wide, {u, v}) >= 200'000.0);
    }
    const double apart = std::hypot(static_cast<double>(layout.points[0][0] - layout.points[1][0]),
                                    static_cast<double>(layout.points[0][1] - layout.points[1][1]));
    CHECK(apart >= 300'000.0);
}

TEST_CASE("as many places as fit are given where not all do", "[model][point_layout]") {
    // Half an edge distance more than the middle is deep leaves nothing; a little less, one place.
    const FlatPolygon wide{{0.0, -1e6}, {1e6, 0.0}, {0.0, 1e6}, {-1e6, 0.0}};
    model::SlantedRoom room{.within = {{-1'000'000, -1'000'000}, {1'000'000, 1'000'000}},
                            .obstacles = {},
                            .inside = {wide},
                            .edge_distance = 707'000.0,
                            .outside = {}};
    CHECK(model::best_points(room, {.step = 50'000}, 2, 300'000).count == 1);
    room.edge_distance = 708'000.0;
    CHECK(model::best_points(room, {.step = 50'000}, 2, 300'000).count == 0);
}

TEST_CASE("places keep clear of a polygon beside them", "[model][point_layout]") {
    const FlatPolygon left{{-1e6, -1e6}, {0.0, -1e6}, {0.0, 1e6}, {-1e6, 1e6}};
    const model::SlantedRoom room{.within = {{-1'000'000, 0}, {1'000'000, 0}},
                                  .obstacles = {},
                                  .inside = {},
                                  .edge_distance = 0.0,
                                  .outside = {{left, 250'000.0}}};
    const auto layout = model::best_points(room, {.step = 50'000}, 1, 300'000);
    REQUIRE(layout.count == 1);
    CHECK(layout.points[0][0] > 250'000);
}

#include "engine/geometry/turned_mesh.h"

#include "tests/support/mesh_checks.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

namespace {

const std::vector<engine::TurnedPoint> pin{{.radius = 0.0, .z = 0.0},
                                           {.radius = 4.0, .z = 0.0, .is_crisp = true},
                                           {.radius = 4.0, .z = 10.0, .is_crisp = true},
                                           {.radius = 0.0, .z = 12.0}};

}  // namespace

TEST_CASE("a turned pin is closed and of the right volume", "[engine][turned_mesh]") {
    const engine::Placement placed{.origin = {1.0, 2.0, 3.0},
                                   .x = {0.0, 1.0, 0.0},
                                   .y = {0.0, 0.0, -1.0},
                                   .z = {1.0, 0.0, 0.0}};
    const auto place = GENERATE_COPY(engine::Placement{}, placed);
    engine::Mesh mesh;
    engine::append_turned(mesh, pin, place);
    CHECK(tests::open_edges(mesh) == 0);
    const double circle = 12.0 * 16.0 * std::sin(3.141592653589793 / 12.0);
    CHECK(tests::volume(mesh) == Approx(circle * (10.0 + 2.0 / 3.0)).epsilon(1e-5));
    CHECK(mesh.edges.size() == 2 * 2 * 24);
}

TEST_CASE("a profile that does not close on its axis appends nothing", "[engine][turned_mesh]") {
    engine::Mesh mesh;
    engine::append_turned(mesh, std::span{pin}.subspan(1), {});
    engine::append_turned(mesh, std::span{pin}.first(2), {});
    const std::vector<engine::TurnedPoint> pinched{
        {0.0, 0.0}, {3.0, 0.0}, {0.0, 1.0}, {3.0, 2.0}, {0.0, 3.0}};
    engine::append_turned(mesh, pinched, {});
    CHECK(mesh == engine::Mesh{});
}

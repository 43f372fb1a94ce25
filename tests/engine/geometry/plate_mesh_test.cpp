#include "engine/geometry/plate_mesh.h"

#include "engine/geometry/unit_circle.h"

#include "tests/support/mesh_checks.h"

#include <catch2/catch.hpp>

#include <random>

namespace {

using engine::FacePoint;
using engine::PlateHole;

double drawn_circle(double radius) {
    // A regular polygon of n corners on a circle: n/2 r2 sin(2 pi / n).
    const auto n = static_cast<double>(engine::hole_chords);
    return n / 2.0 * radius * radius * std::sin(2.0 * 3.141592653589793 / n);
}

const std::vector<FacePoint> gusset{
    {0.0, 0.0}, {80.0, 0.0}, {80.0, 20.0}, {20.0, 80.0}, {0.0, 80.0}};

}  // namespace

TEST_CASE("a drilled gusset is closed and of the right volume and surface",
          "[engine][plate_mesh]") {
    const std::vector<PlateHole> holes{
        {{10.0, 10.0}, 2.5}, {{10.0, 60.0}, 2.5}, {{60.0, 10.0}, 2.5}};
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    CHECK(engine::append_plate(mesh, gusset, 3.0, holes, {}, mesher) == 3);
    CHECK(tests::open_edges(mesh) == 0);
    CHECK(tests::faulty_triangles(mesh) == 0);
    const double face = 80.0 * 80.0 - 60.0 * 60.0 / 2.0 - 3.0 * drawn_circle(2.5);
    CHECK(tests::volume(mesh) == Approx(3.0 * face).epsilon(1e-5));
    const double rim = 80.0 + 20.0 + std::sqrt(7200.0) + 20.0 + 80.0;
    const double chords = 24.0 * 2.0 * 2.5 * std::sin(3.141592653589793 / 24.0);
    CHECK(tests::surface(mesh) == Approx(2.0 * face + 3.0 * (rim + 3.0 * chords)).epsilon(1e-5));
}

TEST_CASE("an outline may run either way round and repeat points", "[engine][plate_mesh]") {
    auto clockwise = gusset;
    std::reverse(clockwise.begin(), clockwise.end());
    clockwise.push_back(clockwise.back());
    clockwise.push_back(clockwise.front());
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    engine::append_plate(mesh, clockwise, 3.0, {}, {}, mesher);
    CHECK(tests::open_edges(mesh) == 0);
    CHECK(tests::volume(mesh) == Approx(3.0 * (6400.0 - 1800.0)));
}

TEST_CASE("a plate's lines are its outline, its corners and the rims of its holes",
          "[engine][plate_mesh]") {
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    engine::append_plate(mesh, gusset, 3.0, std::vector<PlateHole>{{{10.0, 10.0}, 2.5}}, {},
                         mesher);
    CHECK(mesh.edges.size() == 2 * (5 + 5 + 5 + 2 * engine::hole_chords));
}

TEST_CASE("holes over the edge of a plate or each other are left out", "[engine][plate_mesh]") {
    const std::vector<PlateHole> holes{{{10.0, 10.0}, 2.5},
                                       {{13.0, 10.0}, 2.5},
                                       {{1.0, 40.0}, 2.5},
                                       {{60.0, 60.0}, 2.5},
                                       {{40.0, 59.0}, 2.5}};
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    CHECK(engine::append_plate(mesh, gusset, 3.0, holes, {}, mesher) == 1);
    CHECK(tests::open_edges(mesh) == 0);
}

TEST_CASE("an outline that encloses nothing leaves the mesh as it was", "[engine][plate_mesh]") {
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    const std::vector<FacePoint> line{{0.0, 0.0}, {10.0, 0.0}, {5.0, 0.0}};
    engine::append_plate(mesh, line, 3.0, {}, {}, mesher);
    engine::append_plate(mesh, {}, 3.0, {}, {}, mesher);
    engine::append_plate(mesh, gusset, -1.0, {}, {}, mesher);
    CHECK(mesh == engine::Mesh{});
}

TEST_CASE("plates with many random holes are closed", "[engine][plate_mesh]") {
    const auto seed = GENERATE(range(0U, 40U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    std::vector<PlateHole> holes;
    for (unsigned i = 0; i < 100U; ++i) {
        const auto x = static_cast<double>(random() % 80U);
        const auto y = static_cast<double>(random() % 80U);
        holes.push_back({{x, y}, 1.0 + static_cast<double>(random() % 4U)});
    }
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    const auto drawn = engine::append_plate(mesh, gusset, 3.0, holes, {}, mesher);
    CHECK(drawn > 5);
    CHECK(tests::open_edges(mesh) == 0);
    CHECK(tests::faulty_triangles(mesh) == 0);
}

#include "engine/geometry/extrusion.h"

#include "engine/geometry/unit_circle.h"

#include "tests/support/mesh_checks.h"

#include <catch2/catch.hpp>

#include <random>

namespace {

using engine::Corner;
using engine::CrossHole;
using engine::Placement;
using engine::Profile;

Profile profile_of(std::vector<engine::FacePoint> points) {
    Profile profile;
    profile.points = std::move(points);
    profile.corners.assign(profile.points.size(), Corner::crisp);
    profile.loop_ends = {static_cast<std::uint32_t>(profile.points.size())};
    return profile;
}

Profile angle(double a, double b, double t) {
    return profile_of({{0.0, 0.0}, {a, 0.0}, {a, t}, {t, t}, {t, b}, {0.0, b}});
}

Profile tube(double a, double b, double t) {
    auto profile = profile_of({{0.0, 0.0}, {a, 0.0}, {a, b}, {0.0, b}});
    for (const auto& p : {engine::FacePoint{t, t}, {t, b - t}, {a - t, b - t}, {a - t, t}})
        profile.points.push_back(p);
    profile.corners.assign(8, Corner::crisp);
    profile.loop_ends.push_back(8);
    return profile;
}

// Area of the polygon that stands for a circle.
double drawn_circle(double radius) {
    double area = 0.0;
    const auto& circle = engine::unit_circle();
    for (std::size_t i = 0; i < circle.size(); ++i) {
        const auto& p = circle[i];
        const auto& q = circle[(i + 1) % circle.size()];
        area += (p[0] * q[1] - p[1] * q[0]) / 2.0;
    }
    return area * radius * radius;
}

// Four holes through each leg of an angle of 38.1 x 3.175 mm.
std::vector<CrossHole> eight_holes(double length) {
    std::vector<CrossHole> holes;
    for (const double along : {12.0, 24.0, length - 24.0, length - 12.0}) {
        holes.push_back(
            {.axis = 1, .from = 0.0, .to = 3.175, .across = 19.0, .along = along, .radius = 2.45});
        holes.push_back(
            {.axis = 0, .from = 3.175, .to = 0.0, .across = 22.0, .along = along, .radius = 2.45});
    }
    return holes;
}

constexpr Placement turned{.origin = {100.0, -20.0, 5.0},
                           .x = {0.0, 1.0, 0.0},
                           .y = {0.0, 0.0, 1.0},
                           .z = {1.0, 0.0, 0.0}};
constexpr Placement mirrored{
    .origin = {0.0, 0.0, 0.0}, .x = {-1.0, 0.0, 0.0}, .y = {0.0, 1.0, 0.0}, .z = {0.0, 0.0, 1.0}};

}  // namespace

TEST_CASE("a drilled angle is one closed solid of the right volume", "[engine][extrusion]") {
    const auto place = GENERATE(Placement{}, turned, mirrored);
    const double length = 400.0;
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    const auto drawn =
        mesher.append(mesh, angle(38.1, 38.1, 3.175), length, eight_holes(length), place);
    CHECK(drawn == 8);
    CHECK(tests::open_edges(mesh) == 0);
    CHECK(tests::faulty_triangles(mesh) == 0);
    const double section = (38.1 + 38.1 - 3.175) * 3.175;
    const double wanted = section * length - 8.0 * drawn_circle(2.45) * 3.175;
    CHECK(tests::volume(mesh) == Approx(wanted).epsilon(1e-5));
    CHECK(mesh.vertices.size() == 6 * 6 + 8 * 104);
    CHECK(mesh.triangles.size() == 3 * (20 + 8 * (48 + 68)));
}

TEST_CASE("the surface of an angle holds no seam inside the heel", "[engine][extrusion]") {
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    mesher.append(mesh, angle(30.0, 20.0, 3.0), 100.0, {}, {});
    const double section = (30.0 + 20.0 - 3.0) * 3.0;
    CHECK(tests::surface(mesh) == Approx(2.0 * (30.0 + 20.0) * 100.0 + 2.0 * section));
    CHECK(mesh.edges.size() == 2 * 18);
}

TEST_CASE("a tube drilled through one wall stays closed", "[engine][extrusion]") {
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    const std::vector<CrossHole> holes{
        {.axis = 1, .from = 0.0, .to = 2.0, .across = 12.0, .along = 30.0, .radius = 2.0},
        {.axis = 0, .from = 23.0, .to = 25.0, .across = 12.0, .along = 30.0, .radius = 2.0}};
    CHECK(mesher.append(mesh, tube(25.0, 25.0, 2.0), 80.0, holes, turned) == 2);
    CHECK(tests::open_edges(mesh) == 0);
    CHECK(tests::faulty_triangles(mesh) == 0);
    const double section = 25.0 * 25.0 - 21.0 * 21.0;
    CHECK(tests::volume(mesh) ==
          Approx(section * 80.0 - 2.0 * drawn_circle(2.0) * 2.0).epsilon(1e-5));
}

TEST_CASE("a rounded section has lines only where it is crisp", "[engine][extrusion]") {
    auto profile = angle(30.0, 30.0, 3.0);
    profile.corners = {Corner::crisp,   Corner::crisp, Corner::crisp,
                       Corner::tangent, Corner::crisp, Corner::crisp};
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    mesher.append(mesh, profile, 100.0, {}, {});
    CHECK(mesh.edges.size() == 2 * 17);
}

TEST_CASE("holes that break out of the wall or into one another are left out",
          "[engine][extrusion]") {
    const std::vector<CrossHole> holes{
        {.axis = 1, .from = 0.0, .to = 3.0, .across = 15.0, .along = 50.0, .radius = 2.5},
        {.axis = 1, .from = 0.0, .to = 3.0, .across = 17.0, .along = 52.0, .radius = 2.5},
        {.axis = 1, .from = 0.0, .to = 3.0, .across = 5.0, .along = 20.0, .radius = 2.5},
        {.axis = 1, .from = 0.0, .to = 3.0, .across = 15.0, .along = 2.0, .radius = 2.5},
        {.axis = 1, .from = 0.0, .to = 4.0, .across = 15.0, .along = 70.0, .radius = 2.5},
        {.axis = 1, .from = 0.0, .to = 3.0, .across = 15.0, .along = 80.0, .radius = 0.0},
        {.axis = 7, .from = 0.0, .to = 3.0, .across = 15.0, .along = 80.0, .radius = 2.0}};
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    CHECK(mesher.append(mesh, angle(30.0, 30.0, 3.0), 100.0, holes, {}) == 1);
    CHECK(tests::open_edges(mesh) == 0);
}

TEST_CASE("a bar without length or with a crossed section leaves the mesh as it was",
          "[engine][extrusion]") {
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    mesher.append(mesh, angle(30.0, 30.0, 3.0), 0.0, {}, {});
    mesher.append(mesh, profile_of({{0.0, 0.0}, {10.0, 10.0}, {10.0, 0.0}, {0.0, 10.0}}), 50.0, {},
                  {});
    mesher.append(mesh, Profile{}, 50.0, {}, {});
    CHECK(mesh == engine::Mesh{});
}

TEST_CASE("randomly drilled angles are closed and of the right volume", "[engine][extrusion]") {
    const auto seed = GENERATE(range(0U, 60U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    const double length = 300.0;
    std::vector<CrossHole> holes;
    for (unsigned i = 0; i < 60U; ++i) {
        // Tape marks and gauge lines: rows and columns are shared on purpose.
        const double along = 25.4 / 8.0 * static_cast<double>(random() % 95U);
        const double across = 25.4 / 8.0 * static_cast<double>(random() % 12U);
        holes.push_back({.axis = static_cast<std::uint8_t>(random() % 2U),
                         .from = 0.0,
                         .to = 3.175,
                         .across = across,
                         .along = along,
                         .radius = random() % 2U == 0U ? 1.6 : 2.45});
    }
    engine::Mesh mesh;
    engine::ExtrusionMesher mesher;
    mesher.append(mesh, angle(38.1, 38.1, 3.175), length, holes, turned);
    CHECK(tests::open_edges(mesh) == 0);
    CHECK(tests::faulty_triangles(mesh) == 0);
}

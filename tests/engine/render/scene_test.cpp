#include "engine/render/scene.h"

#include "tests/support/mesh_checks.h"

#include <catch2/catch.hpp>

namespace {

constexpr engine::SceneBounds crate{.lo = {-10.0, 0.0, 5.0}, .hi = {30.0, 20.0, 15.0}};

}  // namespace

TEST_CASE("a box is a closed solid with twelve lines", "[engine][scene]") {
    engine::Mesh mesh;
    engine::append_box(mesh, crate);
    CHECK(tests::open_edges(mesh) == 0);
    CHECK(tests::faulty_triangles(mesh) == 0);
    CHECK(tests::volume(mesh) == Approx(40.0 * 20.0 * 10.0));
    CHECK(mesh.edges.size() == 24);
}

TEST_CASE("an item is what was appended since the item before", "[engine][scene]") {
    engine::SceneBatch batch;
    engine::append_box(batch.mesh, crate);
    engine::close_item(batch, {.pick_id = 7});
    engine::Mesh apart;
    engine::append_box(apart, {.lo = {100.0, 0.0, 0.0}, .hi = {101.0, 1.0, 1.0}});
    engine::add_item(batch, apart, {.pick_id = 8});
    REQUIRE(batch.items.size() == 2);
    CHECK(batch.items[0].bounds == crate);
    CHECK(batch.items[1].bounds.lo.x == 100.0);
    CHECK(batch.items[1].triangles_end == 72);
    CHECK(tests::open_edges(batch.mesh) == 0);
    CHECK(engine::bounds_of(batch).hi == glm::dvec3(101.0, 20.0, 15.0));
}

TEST_CASE("an item without faces has the bounds of its lines", "[engine][scene]") {
    engine::SceneBatch batch;
    batch.mesh.edges = {{0.0F, 0.0F, 0.0F}, {3.0F, 4.0F, 5.0F}};
    engine::close_item(batch, {});
    engine::close_item(batch, {});
    CHECK(batch.items[0].bounds.hi == glm::dvec3(3.0, 4.0, 5.0));
    CHECK(engine::is_empty(batch.items[1].bounds));
}

TEST_CASE("the ground reaches beyond the scene on whole steps", "[engine][scene]") {
    const auto inches = GENERATE(true, false);
    const auto grid = engine::ground_below(crate, inches);
    CHECK(grid.spacing == (inches ? 152.4 : 100.0));
    CHECK(grid.area.lo.x < crate.lo.x);
    CHECK(grid.area.hi.y > crate.hi.y);
    CHECK(std::abs(std::remainder(grid.area.lo.x, grid.spacing)) < 1e-9);
    CHECK(engine::is_empty(engine::ground_below({}, inches).area));
}

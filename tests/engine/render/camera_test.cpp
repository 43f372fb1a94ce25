#include "engine/render/camera.h"

#include <catch2/catch.hpp>
#include <glm/geometric.hpp>
#include <glm/vec4.hpp>

#include <numbers>
#include <random>

namespace {

using engine::Camera;
using engine::SceneBounds;
using engine::Viewport;

constexpr SceneBounds cabinet{.lo = {0.0, 0.0, 0.0}, .hi = {914.4, 457.2, 762.0}};
constexpr Viewport wide{.width = 1200, .height = 800};

glm::dvec3 corner_of(const SceneBounds& box, unsigned i) {
    return {(i & 1U) != 0U ? box.hi.x : box.lo.x, (i & 2U) != 0U ? box.hi.y : box.lo.y,
            (i & 4U) != 0U ? box.hi.z : box.lo.z};
}

double distance_to_ray(const engine::Ray& ray, const glm::dvec3& point) {
    const auto to = point - ray.origin;
    return glm::length(to - ray.direction * glm::dot(to, ray.direction));
}

Camera some_camera(std::mt19937& random) {
    const auto share = [&random] { return static_cast<double>(random() % 1000U) / 1000.0; };
    Camera camera;
    camera.target.x = 2000.0 * share() - 1000.0;
    camera.target.y = 2000.0 * share() - 1000.0;
    camera.target.z = 2000.0 * share() - 1000.0;
    camera.distance = 200.0 + 4000.0 * share();
    camera.turn = 6.28 * share() - 3.14;
    camera.tilt = 3.1 * share() - 1.55;
    camera.projection =
        random() % 2U == 0U ? engine::Projection::perspective : engine::Projection::parallel;
    return camera;
}

}  // namespace

TEST_CASE("the named views look along the axes they say", "[engine][camera]") {
    using engine::ViewFrom;
    const auto looks = [](ViewFrom view, glm::dvec3 forward, glm::dvec3 right) {
        const auto camera = engine::seen_from(view);
        CHECK(glm::length(engine::forward_of(camera) - forward) < 1e-12);
        CHECK(glm::length(engine::right_of(camera) - right) < 1e-12);
    };
    looks(ViewFrom::front, {0.0, 1.0, 0.0}, {1.0, 0.0, 0.0});
    looks(ViewFrom::left, {1.0, 0.0, 0.0}, {0.0, -1.0, 0.0});
    looks(ViewFrom::top, {0.0, 0.0, -1.0}, {1.0, 0.0, 0.0});
    CHECK(engine::up_of(engine::seen_from(ViewFrom::top)).y == Approx(1.0));
    CHECK(engine::eye_of(engine::seen_from(ViewFrom::corner)).x > 0.0);
    CHECK(engine::eye_of(engine::seen_from(ViewFrom::corner)).y < 0.0);
    CHECK(engine::eye_of(engine::seen_from(ViewFrom::corner)).z > 0.0);
}

TEST_CASE("a fitted box touches the margin and stays within it", "[engine][camera]") {
    using engine::ViewFrom;
    const auto view = GENERATE(ViewFrom::front, ViewFrom::left, ViewFrom::top, ViewFrom::corner);
    const auto port = GENERATE(Viewport{1200, 800}, Viewport{400, 900});
    const double margin = 0.05;
    const auto camera = engine::fitted(engine::seen_from(view), cabinet, port, margin);
    double widest = 0.0;
    for (unsigned i = 0; i < 8U; ++i) {
        const auto pixel = engine::pixel_of(camera, corner_of(cabinet, i), port);
        REQUIRE(pixel);
        const double x = std::abs(2.0 * pixel->x / port.width - 1.0);
        const double y = std::abs(2.0 * pixel->y / port.height - 1.0);
        widest = std::max({widest, x, y});
    }
    CHECK(widest == Approx(1.0 - 2.0 * margin).margin(1e-9));
}

TEST_CASE("a box without size in the line of sight can be fitted", "[engine][camera]") {
    const SceneBounds point{.lo = {5.0, 5.0, 5.0}, .hi = {5.0, 5.0, 5.0}};
    const auto camera = engine::fitted({}, point, wide);
    CHECK(std::isfinite(camera.distance));
    CHECK(camera.distance > 0.0);
    CHECK(engine::fitted(camera, SceneBounds{}, wide) == camera);
}

TEST_CASE("the ray through a point's pixel passes through the point", "[engine][camera]") {
    const auto seed = GENERATE(range(0U, 50U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    const auto camera = some_camera(random);
    const auto point = camera.target + engine::right_of(camera) * 50.0 -
                       engine::up_of(camera) * 30.0 + engine::forward_of(camera) * 70.0;
    const auto pixel = engine::pixel_of(camera, point, wide);
    REQUIRE(pixel);
    CHECK(distance_to_ray(engine::ray_through(camera, *pixel, wide), point) < 1e-6);
}

TEST_CASE("clip space and pixels tell the same place", "[engine][camera]") {
    const auto seed = GENERATE(range(0U, 50U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    const auto camera = engine::fitted(some_camera(random), cabinet, wide);
    const auto matrix = engine::view_projection(camera, cabinet, wide);
    for (unsigned i = 0; i < 8U; ++i) {
        const auto clip = matrix * glm::dvec4{corner_of(cabinet, i), 1.0};
        const auto seen = glm::dvec3{clip} / clip.w;
        const auto pixel = engine::pixel_of(camera, corner_of(cabinet, i), wide);
        REQUIRE(pixel);
        CHECK((seen.x + 1.0) / 2.0 * wide.width == Approx(pixel->x).epsilon(0).margin(1e-6));
        CHECK((1.0 - seen.y) / 2.0 * wide.height == Approx(pixel->y).epsilon(0).margin(1e-6));
        CHECK(std::abs(seen.z) <= 1.0);
    }
}

TEST_CASE("panning moves what is at the target with the pointer", "[engine][camera]") {
    const auto camera = engine::fitted(engine::seen_from(engine::ViewFrom::corner), cabinet, wide);
    const auto moved = engine::panned(camera, {120.0, -45.0}, wide);
    const auto pixel = engine::pixel_of(moved, camera.target, wide);
    REQUIRE(pixel);
    CHECK(pixel->x == Approx(wide.width / 2.0 + 120.0));
    CHECK(pixel->y == Approx(wide.height / 2.0 - 45.0));
}

TEST_CASE("zooming keeps what lies under the pointer", "[engine][camera]") {
    const auto camera = engine::fitted(engine::seen_from(engine::ViewFrom::corner), cabinet, wide);
    const glm::dvec2 at{300.0, 650.0};
    const double scale = engine::mm_per_pixel(camera, wide);
    const auto under = camera.target +
                       engine::right_of(camera) * ((at.x - wide.width / 2.0) * scale) -
                       engine::up_of(camera) * ((at.y - wide.height / 2.0) * scale);
    const auto nearer = engine::zoomed(camera, 2.5, at, wide);
    CHECK(nearer.distance == Approx(camera.distance / 2.5));
    const auto pixel = engine::pixel_of(nearer, under, wide);
    REQUIRE(pixel);
    CHECK(pixel->x == Approx(at.x));
    CHECK(pixel->y == Approx(at.y));
    CHECK(engine::zoomed(camera, 0.0, at, wide) == camera);
}

TEST_CASE("orbiting stops at straight up and straight down", "[engine][camera]") {
    const Camera camera;
    CHECK(engine::orbited(camera, 0.0, 10.0).tilt == Approx(std::numbers::pi / 2.0));
    CHECK(engine::orbited(camera, 0.0, -10.0).tilt == Approx(-std::numbers::pi / 2.0));
    CHECK(std::abs(engine::orbited(camera, 100.0, 0.0).turn) <= std::numbers::pi);
}

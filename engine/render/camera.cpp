#include "engine/render/camera.h"

#include <glm/geometric.hpp>
#include <glm/gtc/matrix_transform.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace engine {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double nearest = 1.0;       // mm, eye to target
constexpr double farthest = 1.0e7;    // mm
constexpr double eye_before = 1.0e5;  // mm, where parallel rays start: outside of any van

double half_height_slope(const Camera& camera) { return std::tan(camera.field_of_view / 2.0); }

double half_width_slope(const Camera& camera, Viewport viewport) {
    return half_height_slope(camera) * viewport.width / std::max(1, viewport.height);
}

std::array<glm::dvec3, 8> corners(const SceneBounds& box) {
    std::array<glm::dvec3, 8> all;
    for (std::size_t i = 0; i < 8; ++i) {
        all[i] = {(i & 1U) != 0U ? box.hi.x : box.lo.x, (i & 2U) != 0U ? box.hi.y : box.lo.y,
                  (i & 4U) != 0U ? box.hi.z : box.lo.z};
    }
    return all;
}

// The corners as the camera sees them, from its target: x right, y up, z away.
std::array<glm::dvec3, 8> corners_seen(const Camera& camera, const SceneBounds& box) {
    auto all = corners(box);
    const auto right = right_of(camera);
    const auto up = up_of(camera);
    const auto forward = forward_of(camera);
    for (auto& corner : all) {
        const auto from_target = corner - camera.target;
        corner = {glm::dot(from_target, right), glm::dot(from_target, up),
                  glm::dot(from_target, forward)};
    }
    return all;
}

// Along one direction of the picture: how far to move sideways and how far away the eye must be so
// that all points lie between the two planes of the frustum. A point at (x, z) is inside when
// |x - sideways| <= (distance + z) * slope; in parallel projection z does not count.
struct Fit {
    double sideways = 0.0;
    double distance = 0.0;
};

Fit fit_between(const std::array<glm::dvec3, 8>& seen, int axis, double slope, bool parallel) {
    double most = -std::numeric_limits<double>::infinity();
    double least = std::numeric_limits<double>::infinity();
    for (const auto& point : seen) {
        const double slant = parallel ? 0.0 : point.z * slope;
        most = std::max(most, point[axis] - slant);
        least = std::min(least, point[axis] + slant);
    }
    return {.sideways = (most + least) / 2.0, .distance = (most - least) / (2.0 * slope)};
}

struct DepthRange {
    double least = 0.0;
    double most = 0.0;
};

DepthRange depth_range(const Camera& camera, const SceneBounds& box) {
    DepthRange range{.least = camera.distance, .most = camera.distance};
    if (is_empty(box)) return range;
    const auto seen = corners_seen(camera, box);
    const auto [low, high] = std::ranges::minmax(seen, {}, [](const auto& p) { return p.z; });
    return {.least = camera.distance + low.z, .most = camera.distance + high.z};
}

}  // namespace

bool is_empty(const SceneBounds& bounds) {
    return bounds.lo.x > bounds.hi.x || bounds.lo.y > bounds.hi.y || bounds.lo.z > bounds.hi.z;
}

SceneBounds hull(const SceneBounds& a, const SceneBounds& b) {
    return {.lo = glm::min(a.lo, b.lo), .hi = glm::max(a.hi, b.hi)};
}

SceneBounds with_point(const SceneBounds& bounds, const glm::dvec3& point) {
    return {.lo = glm::min(bounds.lo, point), .hi = glm::max(bounds.hi, point)};
}

Camera seen_from(ViewFrom view, const Camera& before) {
    Camera camera = before;
    camera.turn = 0.0;
    camera.tilt = 0.0;
    camera.projection = Projection::parallel;
    switch (view) {
        case ViewFrom::front:
            break;
        case ViewFrom::left:
            camera.turn = -pi / 2.0;
            break;
        case ViewFrom::top:
            camera.tilt = pi / 2.0;
            break;
        case ViewFrom::corner:
            camera.turn = pi * 35.0 / 180.0;
            camera.tilt = pi * 24.0 / 180.0;
            camera.projection = Projection::perspective;
            break;
    }
    return camera;
}

Camera fitted(const Camera& camera, const SceneBounds& box, Viewport viewport, double margin) {
    if (is_empty(box)) return camera;
    Camera fit = camera;
    fit.target = (box.lo + box.hi) / 2.0;
    const auto seen = corners_seen(fit, box);
    const double share = std::max(0.1, 1.0 - 2.0 * margin);
    const bool parallel = camera.projection == Projection::parallel;
    const auto across = fit_between(seen, 0, half_width_slope(camera, viewport) * share, parallel);
    const auto upright = fit_between(seen, 1, half_height_slope(camera) * share, parallel);
    double in_front = nearest;
    for (const auto& point : seen) in_front = std::max(in_front, nearest - point.z);
    fit.distance =
        std::clamp(std::max({across.distance, upright.distance, in_front}), nearest, farthest);
    fit.target += right_of(fit) * across.sideways + up_of(fit) * upright.sideways;
    return fit;
}

Camera orbited(const Camera& camera, double turn_by, double tilt_by) {
    Camera moved = camera;
    moved.turn = std::remainder(camera.turn + turn_by, 2.0 * pi);
    moved.tilt = std::clamp(camera.tilt + tilt_by, -pi / 2.0, pi / 2.0);
    return moved;
}

Camera panned(const Camera& camera, glm::dvec2 by_pixels, Viewport viewport) {
    const double scale = mm_per_pixel(camera, viewport);
    Camera moved = camera;
    moved.target +=
        up_of(camera) * (by_pixels.y * scale) - right_of(camera) * (by_pixels.x * scale);
    return moved;
}

Camera zoomed(const Camera& camera, double factor, glm::dvec2 at, Viewport viewport) {
    if (!(factor > 0.0)) return camera;
    Camera moved = camera;
    moved.distance = std::clamp(camera.distance / factor, nearest, farthest);
    const double kept = moved.distance / camera.distance;
    const double scale = mm_per_pixel(camera, viewport);
    const auto towards = right_of(camera) * ((at.x - viewport.width / 2.0) * scale) -
                         up_of(camera) * ((at.y - viewport.height / 2.0) * scale);
    moved.target += towards * (1.0 - kept);
    return moved;
}

glm::dvec3 forward_of(const Camera& camera) {
    return {-std::sin(camera.turn) * std::cos(camera.tilt),
            std::cos(camera.turn) * std::cos(camera.tilt), -std::sin(camera.tilt)};
}

glm::dvec3 right_of(const Camera& camera) {
    return {std::cos(camera.turn), std::sin(camera.turn), 0.0};
}

glm::dvec3 up_of(const Camera& camera) { return glm::cross(right_of(camera), forward_of(camera)); }

glm::dvec3 eye_of(const Camera& camera) {
    return camera.target - forward_of(camera) * camera.distance;
}

glm::dmat4 view_projection(const Camera& camera, const SceneBounds& box, Viewport viewport) {
    const auto depths = depth_range(camera, box);
    const double slack = 1.0 + 0.001 * (depths.most - depths.least);
    const double far_plane = depths.most + slack;
    const auto view = glm::lookAt(eye_of(camera), camera.target, up_of(camera));
    if (camera.projection == Projection::parallel) {
        const double half_height = camera.distance * half_height_slope(camera);
        const double half_width = camera.distance * half_width_slope(camera, viewport);
        return glm::ortho(-half_width, half_width, -half_height, half_height, depths.least - slack,
                          far_plane) *
               view;
    }
    // Never so near that a 24-bit depth could not tell a sheet's two faces apart at the far end.
    const double far_enough = std::max(far_plane, 2.0 * nearest);
    const double near_plane = std::max({depths.least - slack, far_enough / 1000.0, nearest / 2.0});
    const double aspect = static_cast<double>(viewport.width) / std::max(1, viewport.height);
    return glm::perspective(camera.field_of_view, aspect, near_plane,
                            std::max(far_enough, 1.01 * near_plane)) *
           view;
}

Ray ray_through(const Camera& camera, glm::dvec2 pixel, Viewport viewport) {
    const double scale = mm_per_pixel(camera, viewport);
    const auto across = right_of(camera) * ((pixel.x - viewport.width / 2.0) * scale) -
                        up_of(camera) * ((pixel.y - viewport.height / 2.0) * scale);
    const auto forward = forward_of(camera);
    const auto eye = eye_of(camera);
    if (camera.projection == Projection::parallel)
        return {.origin = eye + across - forward * eye_before, .direction = forward};
    return {.origin = eye, .direction = glm::normalize(forward * camera.distance + across)};
}

std::optional<glm::dvec2> pixel_of(const Camera& camera,
                                   const glm::dvec3& point,
                                   Viewport viewport) {
    const auto from_eye = point - eye_of(camera);
    const double depth = glm::dot(from_eye, forward_of(camera));
    double scale = mm_per_pixel(camera, viewport);
    if (camera.projection == Projection::perspective) {
        if (depth <= 0.0) return std::nullopt;
        scale *= depth / camera.distance;
    }
    return glm::dvec2{viewport.width / 2.0 + glm::dot(from_eye, right_of(camera)) / scale,
                      viewport.height / 2.0 - glm::dot(from_eye, up_of(camera)) / scale};
}

double mm_per_pixel(const Camera& camera, Viewport viewport) {
    return 2.0 * camera.distance * half_height_slope(camera) / std::max(1, viewport.height);
}

}  // namespace engine

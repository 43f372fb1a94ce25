#include "engine/render/pick.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <utility>

namespace engine {
namespace {

glm::dvec3 corner(const Mesh& mesh, std::size_t index) {
    const auto& at = mesh.vertices[mesh.triangles[index]].position;
    return {static_cast<double>(at[0]), static_cast<double>(at[1]), static_cast<double>(at[2])};
}

// Whether a ray comes into a box before `most` (slab by slab).
bool meets(const Ray& ray, const SceneBounds& box, double most) {
    double enter = 0.0;
    double leave = most;
    for (int axis = 0; axis < 3; ++axis) {
        const double speed = ray.direction[axis];
        if (speed == 0.0) {
            if (ray.origin[axis] < box.lo[axis] || ray.origin[axis] > box.hi[axis]) return false;
            continue;
        }
        const double one = (box.lo[axis] - ray.origin[axis]) / speed;
        const double other = (box.hi[axis] - ray.origin[axis]) / speed;
        enter = std::max(enter, std::min(one, other));
        leave = std::min(leave, std::max(one, other));
    }
    return enter <= leave;
}

// Where a ray passes a triangle (T. Moeller, B. Trumbore, Fast, minimum storage ray/triangle
// intersection, 1997, from memory).
std::optional<double> passes(const Ray& ray,
                             const glm::dvec3& a,
                             const glm::dvec3& b,
                             const glm::dvec3& c) {
    const auto ab = b - a;
    const auto ac = c - a;
    const auto across = glm::cross(ray.direction, ac);
    const double size = glm::dot(ab, across);
    if (size == 0.0) return std::nullopt;
    const auto from = ray.origin - a;
    const double u = glm::dot(from, across) / size;
    if (u < 0.0 || u > 1.0) return std::nullopt;
    const auto other = glm::cross(from, ab);
    const double v = glm::dot(ray.direction, other) / size;
    if (v < 0.0 || u + v > 1.0) return std::nullopt;
    const double along = glm::dot(ac, other) / size;
    if (along < 0.0) return std::nullopt;
    return along;
}

}  // namespace

bool is_left_by(const SceneCut* cut, const glm::dvec3& point) {
    constexpr double fineness = 1.0e-3;  // mm; of a place on the plane itself
    return cut == nullptr || glm::dot(cut->normal, point) <= cut->offset + fineness;
}

std::optional<PickHit> pick_along(const SceneBatch& batch, const Ray& ray, const SceneCut* cut) {
    std::optional<PickHit> nearest;
    double most = std::numeric_limits<double>::max();
    std::size_t first = 0;
    for (const auto& item : batch.items) {
        const std::size_t begin = std::exchange(first, item.triangles_end);
        if (item.pick_id == no_pick || !meets(ray, item.bounds, most)) continue;
        for (std::size_t i = begin; i < item.triangles_end; i += 3) {
            const auto a = corner(batch.mesh, i);
            const auto b = corner(batch.mesh, i + 1);
            const auto c = corner(batch.mesh, i + 2);
            const auto along = passes(ray, a, b, c);
            if (!along || *along >= most) continue;
            if (!is_left_by(cut, ray.origin + ray.direction * *along)) continue;
            most = *along;
            nearest = {.pick_id = item.pick_id,
                       .along = most,
                       .at = ray.origin + ray.direction * most,
                       .normal = glm::normalize(glm::cross(b - a, c - a))};
        }
    }
    return nearest;
}

namespace {

// What is solid, or its cut face.
std::optional<PickHit> pick_solid(const SceneData& scene, const Ray& ray) {
    const auto hit = pick_along(scene.solid, ray, scene.cut.get());
    if (!scene.cut) return hit;
    const auto face = pick_along(scene.cut->faces, ray);
    return face && (!hit || face->along < hit->along) ? face : hit;
}

}  // namespace

std::optional<PickHit> pick_at(const SceneData& scene,
                               const Camera& camera,
                               glm::dvec2 pixel,
                               Viewport viewport,
                               double reach) {
    const auto straight = ray_through(camera, pixel, viewport);
    if (auto hit = pick_solid(scene, straight)) return hit;
    constexpr int rings = 3;
    constexpr int directions = 8;
    for (int ring = 1; ring <= rings; ++ring) {
        for (int k = 0; k < directions; ++k) {
            const double angle = 2.0 * std::numbers::pi * k / directions;
            const glm::dvec2 offset{std::cos(angle), std::sin(angle)};
            const auto beside =
                ray_through(camera, pixel + offset * (reach * ring / rings), viewport);
            if (auto hit = pick_solid(scene, beside)) return hit;
        }
    }
    return pick_along(scene.translucent, straight, scene.cut.get());
}

}  // namespace engine

// What lies under the pointer: rays against the triangles of a scene, on the CPU.
#pragma once

#include "engine/render/camera.h"
#include "engine/render/scene.h"

#include <optional>

namespace engine {

struct PickHit {
    PickId pick_id = no_pick;
    double along = 0.0;      // from the ray's origin, mm
    glm::dvec3 at{0.0};      // in the world
    glm::dvec3 normal{0.0};  // unit, of the face that was hit

    bool operator==(const PickHit&) const = default;
};

// The nearest item that can be picked; holes are seen through. What a cut has taken away is passed
// over.
std::optional<PickHit> pick_along(const SceneBatch& batch,
                                  const Ray& ray,
                                  const SceneCut* cut = nullptr);

// Whether a cut leaves the point; no cut leaves everything.
bool is_left_by(const SceneCut* cut, const glm::dvec3& point);

// The solid item under the pixel; where there is none, the one nearest to it within `reach` pixels,
// since a thin bar far away is hard to hit; else the translucent item under it.
std::optional<PickHit> pick_at(const SceneData& scene,
                               const Camera& camera,
                               glm::dvec2 pixel,
                               Viewport viewport,
                               double reach = 4.0);

}  // namespace engine

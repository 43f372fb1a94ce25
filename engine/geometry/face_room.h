// Where in a flat face there is room for a round hole.
#pragma once

#include "engine/geometry/face_triangles.h"

#include <span>

namespace engine {

// How far apart two things must be to be two things, mm.
inline constexpr double least_gap = 1e-3;

// A round hole in a plane, mm.
struct RoundHole {
    FacePoint at{};
    double radius = 0.0;

    bool operator==(const RoundHole&) const = default;
};

double twice_area(std::span<const FacePoint> loop);  // above 0 when it runs counter-clockwise

// Whether a point lies within a loop, which way round it runs.
bool is_inside(const FacePoint& at, std::span<const FacePoint> loop);

// Whether a hole keeps clear of the sides of a loop, wherever it lies.
bool is_clear_of(const RoundHole& hole, std::span<const FacePoint> loop);

bool is_clear_of(const RoundHole& hole, const RoundHole& other);

}  // namespace engine

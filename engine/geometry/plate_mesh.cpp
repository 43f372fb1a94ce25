#include "engine/geometry/plate_mesh.h"

#include "engine/geometry/unit_circle.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double least_gap = 1e-3;  // mm between a hole and an edge or another hole

double twice_area(std::span<const FacePoint> loop) {
    double sum = 0.0;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& p = loop[i];
        const auto& q = loop[(i + 1) % loop.size()];
        sum += p[0] * q[1] - p[1] * q[0];
    }
    return sum;
}

std::vector<FacePoint> tidied(std::span<const FacePoint> outline) {
    std::vector<FacePoint> loop;
    for (const auto& point : outline) {
        if (loop.empty() || loop.back() != point) loop.push_back(point);
    }
    while (loop.size() > 1 && loop.front() == loop.back()) loop.pop_back();
    if (twice_area(loop) < 0.0) std::ranges::reverse(loop);
    return loop;
}

double distance_to_edge(const FacePoint& at, const FacePoint& from, const FacePoint& to) {
    const double dx = to[0] - from[0];
    const double dy = to[1] - from[1];
    const double share = ((at[0] - from[0]) * dx + (at[1] - from[1]) * dy) / (dx * dx + dy * dy);
    const double nearest = std::clamp(share, 0.0, 1.0);
    return std::hypot(at[0] - from[0] - nearest * dx, at[1] - from[1] - nearest * dy);
}

// Edges that a line from the point to the right passes.
bool is_inside(const FacePoint& at, std::span<const FacePoint> loop) {
    bool inside = false;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& p = loop[i];
        const auto& q = loop[(i + 1) % loop.size()];
        if ((p[1] > at[1]) == (q[1] > at[1])) continue;
        if (at[0] < p[0] + (at[1] - p[1]) / (q[1] - p[1]) * (q[0] - p[0])) inside = !inside;
    }
    return inside;
}

bool fits(const PlateHole& hole,
          std::span<const FacePoint> loop,
          std::span<const PlateHole> others) {
    if (!(hole.radius > least_gap) || !is_inside(hole.at, loop)) return false;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& to = loop[(i + 1) % loop.size()];
        if (distance_to_edge(hole.at, loop[i], to) < hole.radius + least_gap) return false;
    }
    return std::ranges::none_of(others, [&hole](const PlateHole& other) {
        return std::hypot(hole.at[0] - other.at[0], hole.at[1] - other.at[1]) <
               hole.radius + other.radius + least_gap;
    });
}

void add_hole(Profile& profile, const PlateHole& hole) {
    const auto& circle = unit_circle();
    for (std::size_t k = 0; k < hole_chords; ++k) {
        const auto& corner = circle[hole_chords - 1 - k];
        profile.points.push_back(
            {hole.at[0] + hole.radius * corner[0], hole.at[1] + hole.radius * corner[1]});
        profile.corners.push_back(Corner::round);
    }
    profile.loop_ends.push_back(static_cast<std::uint32_t>(profile.points.size()));
}

}  // namespace

std::size_t append_plate(Mesh& mesh,
                         std::span<const FacePoint> outline,
                         double thickness,
                         std::span<const PlateHole> holes,
                         const Placement& place,
                         ExtrusionMesher& mesher) {
    Profile profile;
    profile.points = tidied(outline);
    const std::size_t outline_points = profile.points.size();
    profile.corners.assign(outline_points, Corner::crisp);
    profile.loop_ends.push_back(static_cast<std::uint32_t>(outline_points));
    std::vector<PlateHole> drawn;
    for (const auto& hole : holes) {
        if (!fits(hole, std::span{profile.points}.first(outline_points), drawn)) continue;
        drawn.push_back(hole);
        add_hole(profile, hole);
    }
    const std::size_t vertices_before = mesh.vertices.size();
    mesher.append(mesh, profile, thickness, {}, place);
    return mesh.vertices.size() > vertices_before ? drawn.size() : 0;
}

}  // namespace engine

#include "engine/geometry/plate_mesh.h"

#include "engine/geometry/face_room.h"
#include "engine/geometry/unit_circle.h"

#include <algorithm>

namespace engine {
namespace {

std::vector<FacePoint> tidied(std::span<const FacePoint> outline) {
    std::vector<FacePoint> loop;
    for (const auto& point : outline) {
        if (loop.empty() || loop.back() != point) loop.push_back(point);
    }
    while (loop.size() > 1 && loop.front() == loop.back()) loop.pop_back();
    if (twice_area(loop) < 0.0) std::ranges::reverse(loop);
    return loop;
}

bool fits(const PlateHole& hole,
          std::span<const FacePoint> loop,
          std::span<const PlateHole> others) {
    if (!(hole.radius > least_gap) || !is_inside(hole.at, loop) || !is_clear_of(hole, loop))
        return false;
    return std::ranges::all_of(
        others, [&hole](const PlateHole& other) { return is_clear_of(hole, other); });
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

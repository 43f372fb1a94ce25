#include "editor/scan_mesh_drawn.h"

#include "editor/room_scene.h"
#include "engine/geometry/vectors.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>
#include <unordered_map>
#include <vector>

namespace editor {
namespace {

struct Simplified {
    std::vector<engine::ScanPoint> points;
    std::vector<engine::ScanTriangle> triangles;
};

using GoOn = std::function<bool()>;

constexpr std::size_t between_questions = 1U << 16U;  // points or triangles: well below a frame

bool is_stopped(std::size_t at, const GoOn& go_on) {
    return at % between_questions == 0 && !go_on();
}

class Grid {
public:
    Grid(std::span<const engine::ScanPoint> points, float cells) {
        std::array<float, 3> hi{};
        lo_.fill(std::numeric_limits<float>::max());
        hi.fill(std::numeric_limits<float>::lowest());
        for (const auto& point : points) {
            for (std::size_t k = 0; k < 3; ++k) {
                lo_[k] = std::min(lo_[k], point[k]);
                hi[k] = std::max(hi[k], point[k]);
            }
        }
        const float longest = std::max({hi[0] - lo_[0], hi[1] - lo_[1], hi[2] - lo_[2]});
        cell_ = std::max(longest / cells, 1e-6F);
    }

    std::uint64_t cell_of(const engine::ScanPoint& point) const {
        std::uint64_t key = 0;
        for (std::size_t k = 0; k < 3; ++k) {
            const auto at = static_cast<std::uint64_t>(std::max(0.0F, (point[k] - lo_[k]) / cell_));
            key = (key << 21U) | std::min<std::uint64_t>(at, (1U << 21U) - 1U);
        }
        return key;
    }

private:
    std::array<float, 3> lo_{};
    float cell_ = 1.0F;
};

// The first point of a cell stands for all of them.
std::optional<Simplified> simplified(std::span<const engine::ScanPoint> points,
                                     std::span<const engine::ScanTriangle> triangles,
                                     float cells,
                                     const GoOn& go_on) {
    const Grid grid(points, cells);
    Simplified mesh;
    std::unordered_map<std::uint64_t, std::uint32_t> point_of;
    std::vector<std::uint32_t> now(points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (is_stopped(i, go_on)) return std::nullopt;
        const auto next = static_cast<std::uint32_t>(mesh.points.size());
        const auto [at, is_new] = point_of.try_emplace(grid.cell_of(points[i]), next);
        if (is_new) mesh.points.push_back(points[i]);
        now[i] = at->second;
    }
    for (std::size_t i = 0; i < triangles.size(); ++i) {
        if (is_stopped(i, go_on)) return std::nullopt;
        const auto& corners = triangles[i];
        const engine::ScanTriangle it{now[corners[0]], now[corners[1]], now[corners[2]]};
        if (it[0] == it[1] || it[1] == it[2] || it[2] == it[0]) continue;
        mesh.triangles.push_back(it);
    }
    return mesh;
}

engine::Vector to_vector(const engine::ScanPoint& p) {
    return {static_cast<double>(p[0]), static_cast<double>(p[1]), static_cast<double>(p[2])};
}

// Normals of the triangles at a point, by their areas.
std::vector<engine::Vector> normals_of(std::span<const engine::ScanPoint> points,
                                       std::span<const engine::ScanTriangle> triangles) {
    std::vector<engine::Vector> normals(points.size());
    for (const auto& corners : triangles) {
        const auto a = to_vector(points[corners[0]]);
        const auto area = engine::cross(engine::minus(to_vector(points[corners[1]]), a),
                                        engine::minus(to_vector(points[corners[2]]), a));
        for (const auto corner : corners) normals[corner] = engine::plus(normals[corner], area);
    }
    for (auto& normal : normals) {
        const double size = engine::length_of(normal);
        normal = size > 0.0 ? engine::scaled(normal, 1.0 / size) : engine::Vector{0.0, 0.0, 1.0};
    }
    return normals;
}

std::array<float, 3> to_floats(const engine::Vector& v) {
    return {static_cast<float>(v[0]), static_cast<float>(v[1]), static_cast<float>(v[2])};
}

engine::Mesh mesh_of(std::span<const engine::ScanPoint> points,
                     std::span<const engine::ScanTriangle> triangles) {
    engine::Mesh mesh;
    const auto normals = normals_of(points, triangles);
    mesh.vertices.reserve(points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
        mesh.vertices.push_back({points[i], to_floats(normals[i])});
    }
    mesh.triangles.reserve(triangles.size() * 3);
    for (const auto& corners : triangles) {
        mesh.triangles.insert(mesh.triangles.end(), corners.begin(), corners.end());
    }
    return mesh;
}

}  // namespace

std::optional<engine::Mesh> drawn_scan(std::span<const engine::ScanPoint> points,
                                       std::span<const engine::ScanTriangle> triangles,
                                       const std::function<bool()>& go_on) {
    if (!go_on()) return std::nullopt;
    if (triangles.size() <= most_drawn_triangles) return mesh_of(points, triangles);
    for (float cells = 600.0F;; cells *= 0.7F) {
        const auto mesh = simplified(points, triangles, cells, go_on);
        if (!mesh) return std::nullopt;
        if (mesh->triangles.size() <= most_drawn_triangles) {
            return mesh_of(mesh->points, mesh->triangles);
        }
    }
}

void append_placed(engine::Mesh& mesh, const engine::Mesh& scan, const engine::Placement& place) {
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    for (const auto& vertex : scan.vertices) {
        mesh.vertices.push_back({to_floats(engine::point_in(place, to_vector(vertex.position))),
                                 to_floats(engine::direction_in(place, to_vector(vertex.normal)))});
    }
    for (const auto corner : scan.triangles) mesh.triangles.push_back(first + corner);
}

engine::ItemLook scan_look(model::Index obstacle) {
    return {pick_of_obstacle(obstacle), {0xD6, 0xBE, 0x8A, 0xB8}, {0x8F, 0x74, 0x3C, 0xFF}};
}

}  // namespace editor

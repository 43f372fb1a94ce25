#include "engine/render/scene_cut.h"

#include "engine/geometry/mesh_writer.h"

#include <glm/geometric.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

namespace engine {
namespace {

constexpr double thinnest = 1.0e-6;  // mm: less is no area

glm::dvec3 position(const Mesh& mesh, std::size_t index) {
    const auto& at = mesh.vertices[mesh.triangles[index]].position;
    return {static_cast<double>(at[0]), static_cast<double>(at[1]), static_cast<double>(at[2])};
}

// The plane with two directions in it: seen against its normal, u to the right and v upwards.
struct Plane {
    glm::dvec3 normal;
    double offset;
    glm::dvec3 u;
    glm::dvec3 v;

    explicit Plane(const SceneCut& cut) : normal{cut.normal}, offset{cut.offset} {
        const glm::dvec3 aside =
            std::abs(normal.z) > 0.9 ? glm::dvec3{1.0, 0.0, 0.0} : glm::dvec3{0.0, 0.0, 1.0};
        v = glm::normalize(aside - normal * glm::dot(aside, normal));
        u = glm::cross(v, normal);
    }

    double height(const glm::dvec3& at) const { return glm::dot(normal, at) - offset; }
    MeshPoint in_space(double right, double up) const {
        const auto at = normal * offset + u * right + v * up;
        return to_floats({at.x, at.y, at.z});
    }
};

// From the corner below to the one above, so that two triangles find the same point on the edge
// that they share.
glm::dvec3 crossing(const Plane& plane, glm::dvec3 from, glm::dvec3 to) {
    if (plane.height(from) >= 0.0) std::swap(from, to);
    const double low = plane.height(from);
    const double high = plane.height(to);
    return from + (to - from) * (low / (low - high));
}

// What the plane leaves of a triangle; a corner in the plane counts as one above it. The inside of
// the shape lies to the left.
std::optional<CutLine> line_through(const Plane& plane, const std::array<glm::dvec3, 3>& corners) {
    std::optional<glm::dvec3> down;
    std::optional<glm::dvec3> up;
    for (std::size_t i = 0; i < 3; ++i) {
        const auto& from = corners[i];
        const auto& to = corners[(i + 1) % 3];
        const bool starts_above = plane.height(from) >= 0.0;
        if (starts_above == (plane.height(to) >= 0.0)) continue;
        (starts_above ? down : up) = crossing(plane, from, to);
    }
    if (!down || !up) return std::nullopt;
    return CutLine{{glm::dot(*down, plane.u), glm::dot(*down, plane.v)},
                   {glm::dot(*up, plane.u), glm::dot(*up, plane.v)}};
}

bool reaches(const Plane& plane, const SceneBounds& box) {
    if (is_empty(box)) return false;
    const auto middle = (box.lo + box.hi) / 2.0;
    const auto half = (box.hi - box.lo) / 2.0;
    return std::abs(plane.height(middle)) <= glm::dot(glm::abs(plane.normal), half);
}

// A line of the outline where it passes between two heights.
struct Side {
    double low = 0.0;   // how far right at the lower height
    double high = 0.0;  // at the upper one
    int sense = 1;      // 1: the inside lies to its right
};

double right_at(const CutLine& line, double height) {
    const double share = (height - line.from[1]) / (line.to[1] - line.from[1]);
    return line.from[0] + (line.to[0] - line.from[0]) * share;
}

std::vector<Side> sides_between(std::span<const CutLine> outline, double low, double high) {
    const double middle = (low + high) / 2.0;
    std::vector<Side> sides;
    for (const auto& line : outline) {
        const auto [least, most] = std::minmax(line.from[1], line.to[1]);
        if (!(least < middle && middle < most)) continue;
        sides.push_back(
            {right_at(line, low), right_at(line, high), line.to[1] < line.from[1] ? 1 : -1});
    }
    std::ranges::sort(sides, {}, [](const Side& side) { return side.low + side.high; });
    return sides;
}

void append_filled(Mesh& mesh, const Plane& plane, std::span<const CutLine> outline) {
    const auto normal = to_floats({plane.normal.x, plane.normal.y, plane.normal.z});
    for (const auto& it : filled(outline)) {
        const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
        mesh.vertices.push_back({plane.in_space(it.low_left, it.low), normal});
        mesh.vertices.push_back({plane.in_space(it.low_right, it.low), normal});
        mesh.vertices.push_back({plane.in_space(it.high_right, it.high), normal});
        mesh.vertices.push_back({plane.in_space(it.high_left, it.high), normal});
        for (const auto i : {0U, 1U, 2U, 0U, 2U, 3U}) mesh.triangles.push_back(first + i);
    }
}

Colour mixed(Colour a, Colour b, double share) {
    const auto mix = [share](std::uint8_t x, std::uint8_t y) {
        return static_cast<std::uint8_t>(std::lround(x + (y - x) * share));
    };
    return {mix(a.red, b.red), mix(a.green, b.green), mix(a.blue, b.blue), 255};
}

}  // namespace

std::vector<CutTrapezoid> filled(std::span<const CutLine> outline) {
    std::vector<double> heights;
    for (const auto& line : outline) heights.insert(heights.end(), {line.from[1], line.to[1]});
    std::ranges::sort(heights);
    std::vector<CutTrapezoid> all;
    for (std::size_t i = 1; i < heights.size(); ++i) {
        const double low = heights[i - 1];
        const double high = heights[i];
        if (high - low < thinnest) continue;
        int depth = 0;
        Side left;
        for (const auto& side : sides_between(outline, low, high)) {
            if (depth == 0) left = side;
            depth += side.sense;
            if (depth == 0) all.push_back({low, high, left.low, side.low, left.high, side.high});
        }
    }
    return all;
}

void append_cut_faces(SceneCut& cut, const SceneBatch& batch, const CutLook& look, bool is_filled) {
    const Plane plane{cut};
    std::size_t first = 0;
    std::vector<CutLine> outline;
    for (const auto& item : batch.items) {
        const std::size_t begin = std::exchange(first, item.triangles_end);
        if (!reaches(plane, item.bounds)) continue;
        outline.clear();
        for (std::size_t i = begin; i < item.triangles_end; i += 3) {
            const auto line =
                line_through(plane, {position(batch.mesh, i), position(batch.mesh, i + 1),
                                     position(batch.mesh, i + 2)});
            if (line) outline.push_back(*line);
        }
        if (outline.empty()) continue;
        auto& mesh = cut.faces.mesh;
        if (is_filled) append_filled(mesh, plane, outline);
        for (const auto& line : outline) {
            mesh.edges.push_back(plane.in_space(line.from[0], line.from[1]));
            mesh.edges.push_back(plane.in_space(line.to[0], line.to[1]));
        }
        close_item(cut.faces, {item.pick_id, mixed(item.colour, look.tint, look.share), look.line});
    }
}

}  // namespace engine

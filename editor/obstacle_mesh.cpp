#include "editor/obstacle_mesh.h"

#include "engine/geometry/mesh_writer.h"
#include "engine/geometry/vectors.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <map>
#include <utility>
#include <vector>

namespace editor {
namespace {

using engine::minus;
using engine::Vector;

struct Face {
    std::vector<Vector> corners;  // counter-clockwise seen from outside
    Vector normal{};              // unit
};

// Corners that are the same to a thousandth of a millimetre are one.
using PointKey = std::array<std::int64_t, 3>;
using EdgeKey = std::pair<PointKey, PointKey>;

PointKey key_of(const Vector& at) {
    return {std::llround(at[0] * 1e3), std::llround(at[1] * 1e3), std::llround(at[2] * 1e3)};
}

EdgeKey key_of(const Vector& a, const Vector& b) { return std::minmax(key_of(a), key_of(b)); }

std::vector<PointKey> key_of(const Face& face) {
    std::vector<PointKey> keys;
    for (const auto& corner : face.corners) keys.push_back(key_of(corner));
    std::sort(keys.begin(), keys.end());
    return keys;
}

// Twice the area along the normal, whatever the corners do (Newell's method, from memory).
Vector area_vector(const std::vector<Vector>& corners) {
    Vector sum{};
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const auto part = engine::cross(minus(corners[i], corners[0]),
                                        minus(corners[(i + 1) % corners.size()], corners[0]));
        for (std::size_t k = 0; k < 3; ++k) sum[k] += part[k];
    }
    return sum;
}

Vector middle_of(const std::vector<Vector>& corners) {
    Vector sum{};
    for (const auto& corner : corners) {
        for (std::size_t k = 0; k < 3; ++k) sum[k] += corner[k];
    }
    for (auto& value : sum) value /= static_cast<double>(corners.size());
    return sum;
}

// None of a face that has run out to a line.
void add_face(std::vector<Face>& faces, std::vector<Vector> corners, const Vector& inside) {
    auto normal = area_vector(corners);
    const double size = std::sqrt(engine::dot(normal, normal));
    constexpr double least_area = 1e-6;
    if (!(size > least_area)) return;
    for (auto& value : normal) value /= size;
    if (engine::dot(normal, minus(middle_of(corners), inside)) < 0.0) {
        std::reverse(corners.begin(), corners.end());
        for (auto& value : normal) value = -value;
    }
    faces.push_back({std::move(corners), normal});
}

Vector middle_of(const engine::Prism& body) {
    auto corners = body.near;
    corners.insert(corners.end(), body.far.begin(), body.far.end());
    return middle_of(corners);
}

void add_faces(std::vector<Face>& faces, const engine::Prism& body) {
    const auto inside = middle_of(body);
    add_face(faces, body.near, inside);
    add_face(faces, body.far, inside);
    for (std::size_t i = 0; i < body.near.size(); ++i) {
        const auto next = (i + 1) % body.near.size();
        add_face(faces, {body.near[i], body.near[next], body.far[next], body.far[i]}, inside);
    }
}

std::vector<Face> outer_faces(std::span<const engine::Prism> bodies) {
    std::vector<Face> faces;
    for (const auto& body : bodies) add_faces(faces, body);
    if (bodies.size() < 2) return faces;
    std::map<std::vector<PointKey>, int> count;
    for (const auto& face : faces) ++count[key_of(face)];
    std::erase_if(faces, [&](const Face& face) { return count[key_of(face)] > 1; });
    return faces;
}

void append_face(engine::Mesh& mesh, const Face& face) {
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    const auto normal = engine::to_floats(face.normal);
    for (const auto& corner : face.corners) {
        mesh.vertices.push_back({engine::to_floats(corner), normal});
    }
    for (std::uint32_t i = 1; i + 1 < face.corners.size(); ++i) {
        mesh.triangles.insert(mesh.triangles.end(), {first, first + i, first + i + 1});
    }
}

struct Edge {
    Vector a{};
    Vector b{};
    std::vector<Vector> normals;  // of the faces at it
};

std::map<EdgeKey, Edge> edges_of(const std::vector<Face>& faces) {
    std::map<EdgeKey, Edge> edges;
    for (const auto& face : faces) {
        for (std::size_t i = 0; i < face.corners.size(); ++i) {
            const auto& a = face.corners[i];
            const auto& b = face.corners[(i + 1) % face.corners.size()];
            auto& edge = edges[key_of(a, b)];
            edge.a = a;
            edge.b = b;
            edge.normals.push_back(face.normal);
        }
    }
    return edges;
}

bool is_crisp(const Edge& edge) {
    constexpr double cosine_of_shallow = 0.9;  // 26 degrees
    return edge.normals.size() != 2 ||
           engine::dot(edge.normals[0], edge.normals[1]) < cosine_of_shallow;
}

// One end of a surface's field to the other: no fold of it.
bool lies_along_an_axis(const Edge& edge, std::size_t across) {
    constexpr double same = 1e-3;
    return std::abs(edge.a[across] - edge.b[across]) < same ||
           std::abs(edge.a[1] - edge.b[1]) < same;
}

void append_edge(engine::Mesh& mesh, const Edge& edge) {
    mesh.edges.push_back(engine::to_floats(edge.a));
    mesh.edges.push_back(engine::to_floats(edge.b));
}

}  // namespace

void append_bodies(engine::Mesh& mesh, std::span<const engine::Prism> bodies) {
    const auto faces = outer_faces(bodies);
    for (const auto& face : faces) append_face(mesh, face);
    for (const auto& [key, edge] : edges_of(faces)) {
        if (is_crisp(edge)) append_edge(mesh, edge);
    }
}

void append_near_faces(engine::Mesh& mesh,
                       std::span<const engine::Prism> bodies,
                       const ShownAcross& shown) {
    constexpr double rounding = 1e-3;
    std::vector<Face> faces;
    for (const auto& body : bodies) {
        const bool is_shown = std::ranges::all_of(body.near, [&](const Vector& at) {
            return at[shown.axis] > shown.least - rounding &&
                   at[shown.axis] < shown.most + rounding;
        });
        if (is_shown) add_face(faces, body.near, middle_of(body));
    }
    for (const auto& face : faces) append_face(mesh, face);
    for (const auto& [key, edge] : edges_of(faces)) {
        if (lies_along_an_axis(edge, shown.axis)) append_edge(mesh, edge);
    }
}

void dash_edges(engine::Mesh& mesh, std::size_t first) {
    constexpr float dash = 45.0F;  // mm
    constexpr float gap = 30.0F;
    const std::vector whole(mesh.edges.begin() + static_cast<std::ptrdiff_t>(first),
                            mesh.edges.end());
    mesh.edges.resize(first);
    for (std::size_t i = 0; i + 1 < whole.size(); i += 2) {
        const auto& a = whole[i];
        const auto& b = whole[i + 1];
        const float length = std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
        const auto at = [&](float along) {
            const float part = std::min(along / length, 1.0F);
            return std::array{a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1]),
                              a[2] + part * (b[2] - a[2])};
        };
        // Of a line of many kilometres, typed by mistake, only the first dashes.
        for (int n = 0; n < 400 && static_cast<float>(n) * (dash + gap) < length; ++n) {
            const float from = static_cast<float>(n) * (dash + gap);
            mesh.edges.push_back(at(from));
            mesh.edges.push_back(at(from + dash));
        }
    }
}

}  // namespace editor

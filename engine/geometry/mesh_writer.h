// Writes triangles and edges straight into a mesh that was grown once for all of them.
#pragma once

#include "engine/geometry/mesh.h"
#include "engine/geometry/placement.h"

#include <array>
#include <cassert>
#include <cstddef>
#include <cstdint>

namespace engine {

using MeshPoint = std::array<float, 3>;

inline MeshPoint to_floats(const Vector& v) {
    return {static_cast<float>(v[0]), static_cast<float>(v[1]), static_cast<float>(v[2])};
}

// What a shape will need at most.
struct MeshCounts {
    std::size_t vertices = 0;
    std::size_t triangles = 0;
    std::size_t edges = 0;
};

class MeshWriter {
public:
    // A mirrored shape has its triangles turned over, so that they still look outwards.
    MeshWriter(Mesh& mesh, const MeshCounts& most, bool mirrored)
        : mesh_{mesh},
          vertices_{mesh.vertices.size()},
          indices_{mesh.triangles.size()},
          edge_ends_{mesh.edges.size()},
          second_{mirrored ? 2U : 1U},
          third_{mirrored ? 1U : 2U} {
        mesh.vertices.resize(vertices_ + most.vertices);
        mesh.triangles.resize(indices_ + 3 * most.triangles);
        mesh.edges.resize(edge_ends_ + 2 * most.edges);
    }

    MeshWriter(const MeshWriter&) = delete;
    MeshWriter& operator=(const MeshWriter&) = delete;

    ~MeshWriter() {
        mesh_.vertices.resize(vertices_);
        mesh_.triangles.resize(indices_);
        mesh_.edges.resize(edge_ends_);
    }

    std::uint32_t next_vertex() const { return static_cast<std::uint32_t>(vertices_); }

    std::uint32_t vertex(const MeshPoint& position, const MeshPoint& normal) {
        assert(vertices_ < mesh_.vertices.size());
        mesh_.vertices[vertices_] = {position, normal};
        return static_cast<std::uint32_t>(vertices_++);
    }

    // Counter-clockwise seen from outside, in the shape's own axes.
    void triangle(std::uint32_t a, std::uint32_t b, std::uint32_t c) {
        assert(indices_ + 3 <= mesh_.triangles.size());
        mesh_.triangles[indices_] = a;
        mesh_.triangles[indices_ + second_] = b;
        mesh_.triangles[indices_ + third_] = c;
        indices_ += 3;
    }

    void quad(std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
        triangle(a, b, c);
        triangle(a, c, d);
    }

    void edge(const MeshPoint& a, const MeshPoint& b) {
        assert(edge_ends_ + 2 <= mesh_.edges.size());
        mesh_.edges[edge_ends_] = a;
        mesh_.edges[edge_ends_ + 1] = b;
        edge_ends_ += 2;
    }

private:
    Mesh& mesh_;
    std::size_t vertices_;
    std::size_t indices_;
    std::size_t edge_ends_;
    std::size_t second_;
    std::size_t third_;
};

}  // namespace engine

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

inline MeshCounts operator+(const MeshCounts& a, const MeshCounts& b) {
    return {.vertices = a.vertices + b.vertices,
            .triangles = a.triangles + b.triangles,
            .edges = a.edges + b.edges};
}

// Room for so much more, so that a mesh made of many shapes grows once.
inline void reserve_more(Mesh& mesh, const MeshCounts& more) {
    mesh.vertices.reserve(mesh.vertices.size() + more.vertices);
    mesh.triangles.reserve(mesh.triangles.size() + 3 * more.triangles);
    mesh.edges.reserve(mesh.edges.size() + 2 * more.edges);
}

class MeshWriter {
public:
    // A mirrored shape has its triangles turned over, so that they still look outwards.
    MeshWriter(Mesh& mesh, const MeshCounts& most, bool mirrored)
        : mesh_{mesh}, second_{mirrored ? 2 : 1}, third_{mirrored ? 1 : 2} {
        const auto vertices = mesh.vertices.size();
        const auto indices = mesh.triangles.size();
        const auto ends = mesh.edges.size();
        mesh.vertices.resize(vertices + most.vertices);
        mesh.triangles.resize(indices + 3 * most.triangles);
        mesh.edges.resize(ends + 2 * most.edges);
        vertex_count_ = static_cast<std::uint32_t>(vertices);
        next_vertex_ = mesh.vertices.data() + vertices;
        next_index_ = mesh.triangles.data() + indices;
        next_end_ = mesh.edges.data() + ends;
    }

    MeshWriter(const MeshWriter&) = delete;
    MeshWriter& operator=(const MeshWriter&) = delete;

    // Gives back what was not needed.
    ~MeshWriter() {
        mesh_.vertices.resize(static_cast<std::size_t>(next_vertex_ - mesh_.vertices.data()));
        mesh_.triangles.resize(static_cast<std::size_t>(next_index_ - mesh_.triangles.data()));
        mesh_.edges.resize(static_cast<std::size_t>(next_end_ - mesh_.edges.data()));
    }

    std::uint32_t next_vertex() const { return vertex_count_; }

    std::uint32_t vertex(const MeshPoint& position, const MeshPoint& normal) {
        assert(next_vertex_ < mesh_.vertices.data() + mesh_.vertices.size());
        *next_vertex_++ = {position, normal};
        return vertex_count_++;
    }

    // Counter-clockwise seen from outside, in the shape's own axes.
    void triangle(std::uint32_t a, std::uint32_t b, std::uint32_t c) {
        assert(next_index_ + 3 <= mesh_.triangles.data() + mesh_.triangles.size());
        next_index_[0] = a;
        next_index_[second_] = b;
        next_index_[third_] = c;
        next_index_ += 3;
    }

    void quad(std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
        triangle(a, b, c);
        triangle(a, c, d);
    }

    void edge(const MeshPoint& a, const MeshPoint& b) {
        assert(next_end_ + 2 <= mesh_.edges.data() + mesh_.edges.size());
        next_end_[0] = a;
        next_end_[1] = b;
        next_end_ += 2;
    }

private:
    Mesh& mesh_;
    std::uint32_t vertex_count_ = 0;
    MeshVertex* next_vertex_ = nullptr;
    std::uint32_t* next_index_ = nullptr;
    MeshPoint* next_end_ = nullptr;
    std::ptrdiff_t second_;
    std::ptrdiff_t third_;
};

}  // namespace engine

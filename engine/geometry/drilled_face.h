// A flat rectangle with round holes in it, as triangles.
#pragma once

#include "engine/geometry/face_triangles.h"
#include "engine/geometry/mesh_writer.h"
#include "engine/geometry/unit_circle.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace engine {

// The corners of a hole's rim in the world, in the order of unit_circle.
using Rim = std::array<MeshPoint, hole_chords>;

// A hole as it lies in its face's own plane.
struct FaceHole {
    FacePoint at{};
    double radius = 0.0;
    bool is_turned_over = false;  // the rim's order runs clockwise in the face's plane
    const Rim* rim = nullptr;     // not null; must live until the face is written
};

// Most that one hole adds to a face.
inline constexpr std::size_t hole_vertices_most = hole_chords + 4;
inline constexpr std::size_t hole_triangles_most = hole_chords + 10;

// Keeps its working memory from one face to the next.
class DrilledFace {
public:
    // A face of x from 0 to `width`, y from 0 to `height`; its corners in the world run
    // counter-clockwise from the origin.
    void begin(double width, double height, const std::array<MeshPoint, 4>& corners);

    // A hole wholly within the face and clear of the others.
    void add(const FaceHole& hole) { holes_.push_back(hole); }

    void write(MeshWriter& writer, const MeshPoint& normal);

private:
    bool has_room_for_collars() const;
    void write_with_collars(MeshWriter& writer, const MeshPoint& normal);
    void write_whole(MeshWriter& writer, const MeshPoint& normal);
    void write_between_loops(MeshWriter& writer, std::uint32_t base);

    double width_ = 0.0;
    double height_ = 0.0;
    std::array<MeshPoint, 4> corners_{};
    std::vector<FaceHole> holes_;
    FaceTriangles triangles_;
    std::vector<FacePoint> points_;
    std::vector<std::uint32_t> loop_ends_;
};

}  // namespace engine

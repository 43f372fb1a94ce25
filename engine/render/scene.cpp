#include "engine/render/scene.h"

#include "engine/geometry/mesh_writer.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace engine {
namespace {

void include(SceneBounds& bounds, const MeshPoint& at) {
    bounds = with_point(bounds, {static_cast<double>(at[0]), static_cast<double>(at[1]),
                                 static_cast<double>(at[2])});
}

}  // namespace

void close_item(SceneBatch& batch, const ItemLook& look) {
    const std::size_t vertices = batch.items.empty() ? 0 : batch.items.back().vertices_end;
    const std::size_t edges = batch.items.empty() ? 0 : batch.items.back().edges_end;
    SceneItem item{.pick_id = look.pick_id, .colour = look.colour, .line = look.line};
    item.vertices_end = static_cast<std::uint32_t>(batch.mesh.vertices.size());
    item.triangles_end = static_cast<std::uint32_t>(batch.mesh.triangles.size());
    item.edges_end = static_cast<std::uint32_t>(batch.mesh.edges.size());
    MeshPoint lo{};
    MeshPoint hi{};
    for (std::size_t i = vertices; i < item.vertices_end; ++i) {
        const auto& at = batch.mesh.vertices[i].position;
        for (std::size_t k = 0; k < 3; ++k) {
            lo[k] = i == vertices ? at[k] : std::min(lo[k], at[k]);
            hi[k] = i == vertices ? at[k] : std::max(hi[k], at[k]);
        }
    }
    if (item.vertices_end > vertices) {
        include(item.bounds, lo);
        include(item.bounds, hi);
    }
    for (std::size_t i = edges; item.vertices_end == vertices && i < item.edges_end; ++i)
        include(item.bounds, batch.mesh.edges[i]);
    batch.items.push_back(item);
}

void add_item(SceneBatch& batch, const Mesh& mesh, const ItemLook& look) {
    const auto base = static_cast<std::uint32_t>(batch.mesh.vertices.size());
    auto& into = batch.mesh;
    into.vertices.insert(into.vertices.end(), mesh.vertices.begin(), mesh.vertices.end());
    into.edges.insert(into.edges.end(), mesh.edges.begin(), mesh.edges.end());
    into.triangles.reserve(into.triangles.size() + mesh.triangles.size());
    for (const auto index : mesh.triangles) into.triangles.push_back(base + index);
    close_item(batch, look);
}

void append_box(Mesh& mesh, const SceneBounds& box) {
    if (is_empty(box)) return;
    const auto corner = [&box](unsigned i) {
        return to_floats({(i & 1U) != 0U ? box.hi.x : box.lo.x,
                          (i & 2U) != 0U ? box.hi.y : box.lo.y,
                          (i & 4U) != 0U ? box.hi.z : box.lo.z});
    };
    // Axis of each face's normal, its sense, and the corners counter-clockwise seen from outside.
    struct Face {
        std::size_t axis;
        float sense;
        std::array<unsigned, 4> corners;
    };
    constexpr std::array<Face, 6> faces{{{0, -1.0F, {0, 4, 6, 2}},
                                         {0, 1.0F, {1, 3, 7, 5}},
                                         {1, -1.0F, {0, 1, 5, 4}},
                                         {1, 1.0F, {2, 6, 7, 3}},
                                         {2, -1.0F, {0, 2, 3, 1}},
                                         {2, 1.0F, {4, 5, 7, 6}}}};
    for (const auto& face : faces) {
        const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
        MeshPoint normal{};
        normal[face.axis] = face.sense;
        for (const auto i : face.corners) mesh.vertices.push_back({corner(i), normal});
        for (const auto i : {0U, 1U, 2U, 0U, 2U, 3U}) mesh.triangles.push_back(first + i);
    }
    for (unsigned i = 0; i < 8; ++i) {
        for (const unsigned along : {1U, 2U, 4U}) {
            if ((i & along) != 0U) continue;
            mesh.edges.push_back(corner(i));
            mesh.edges.push_back(corner(i | along));
        }
    }
}

GroundGrid ground_below(const SceneBounds& box, bool inches) {
    if (is_empty(box)) return {};
    const double widest = std::max(box.hi.x - box.lo.x, box.hi.y - box.lo.y);
    const auto spacings =
        inches ? std::array{152.4, 304.8, 609.6} : std::array{100.0, 250.0, 500.0};
    double spacing = spacings.back();
    for (std::size_t i = spacings.size(); i > 0; --i) {
        if (spacings[i - 1] * 30.0 > widest) spacing = spacings[i - 1];
    }
    GroundGrid grid{.spacing = spacing};
    const double border = std::max(2.0 * spacing, 0.25 * widest);
    for (int axis = 0; axis < 2; ++axis) {
        grid.area.lo[axis] = std::floor((box.lo[axis] - border) / spacing) * spacing;
        grid.area.hi[axis] = std::ceil((box.hi[axis] + border) / spacing) * spacing;
    }
    grid.area.lo.z = grid.area.hi.z = grid.height;
    return grid;
}

SceneBounds bounds_of(const SceneBatch& batch) {
    SceneBounds all;
    for (const auto& item : batch.items) all = hull(all, item.bounds);
    return all;
}

SceneBounds bounds_of(const SceneData& scene) {
    const auto all = hull(bounds_of(scene.solid), bounds_of(scene.translucent));
    const auto with_ghost = scene.ghost ? hull(all, bounds_of(*scene.ghost)) : all;
    return scene.fixed ? hull(with_ghost, bounds_of(*scene.fixed)) : with_ghost;
}

}  // namespace engine

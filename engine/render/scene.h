// What is to be drawn, as plain values that need no OpenGL: solid items, translucent items, a
// ground grid. Items are told apart by a pick id that the caller gives them.
#pragma once

#include "engine/geometry/mesh.h"
#include "engine/render/camera.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace engine {

struct Colour {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;
    std::uint8_t alpha = 255;

    bool operator==(const Colour&) const = default;
};

using PickId = std::uint32_t;
inline constexpr PickId no_pick = 0xFFFFFFFFU;  // cannot be picked

// A run of the batch's mesh, up to the ends given here; it starts where the item before ends.
struct SceneItem {
    PickId pick_id = no_pick;
    Colour colour;
    Colour line;  // of its crisp edges
    std::uint32_t vertices_end = 0;
    std::uint32_t triangles_end = 0;  // in indices, three to a triangle
    std::uint32_t edges_end = 0;      // in positions, two to an edge
    SceneBounds bounds;

    bool operator==(const SceneItem&) const = default;
};

// Many items in one mesh: append an item's triangles and edges to `mesh`, then close it.
struct SceneBatch {
    Mesh mesh;
    std::vector<SceneItem> items;

    bool operator==(const SceneBatch&) const = default;
};

struct ItemLook {
    PickId pick_id = no_pick;
    Colour colour;
    Colour line;
};

// Makes an item of all that was appended to the mesh since the item before.
void close_item(SceneBatch& batch, const ItemLook& look);

// The same for a mesh that was made apart.
void add_item(SceneBatch& batch, const Mesh& mesh, const ItemLook& look);

// A box as twelve triangles and twelve edges: for obstacles and the like. mm.
void append_box(Mesh& mesh, const SceneBounds& box);

struct GroundGrid {
    double spacing = 100.0;  // mm
    double height = 0.0;     // z
    SceneBounds area;        // its x and y; empty: no grid

    bool operator==(const GroundGrid&) const = default;
};

// A grid on z = 0 a little larger than the box, at a spacing of a tenth to a half of a metre or
// 6 to 24 inches.
GroundGrid ground_below(const SceneBounds& box, bool inches);

// A plane through the scene. What lies before it, along its normal, is neither drawn nor picked;
// its faces, where it goes through metal, and their outlines lie in it.
struct SceneCut {
    glm::dvec3 normal{0.0, 0.0, 1.0};  // unit, towards what is taken away
    double offset = 0.0;               // mm, of the plane along its normal
    SceneBatch faces;
};

struct SceneData {
    // Changes when anything else in here changes; the renderer uploads when it does.
    std::uint64_t revision = 0;
    SceneBatch solid;
    SceneBatch translucent;  // drawn over the solids, by the alpha of its colours
    // Large meshes that seldom change, translucent and seen from their front only. Uploaded when it
    // is another one, whatever the revision.
    std::shared_ptr<const SceneBatch> fixed;
    std::shared_ptr<const SceneCut> cut;  // uploaded when it is another one, too
    // What is not there yet: translucent, its lines seen through what lies before it. Uploaded when
    // it is another one, whatever the revision.
    std::shared_ptr<const SceneBatch> ghost;
    GroundGrid ground;
};

// Everything in the scene but the ground.
SceneBounds bounds_of(const SceneData& scene);
SceneBounds bounds_of(const SceneBatch& batch);

// What is shown with the accent. Both may change without a new revision.
struct SceneEmphasis {
    std::vector<PickId> selected;
    std::optional<PickId> hovered;

    bool operator==(const SceneEmphasis&) const = default;
};

// How the scene looks. The defaults are the bright look; a dark one is the caller's to give.
struct SceneStyle {
    Colour paper{0xF4, 0xF1, 0xEA};
    Colour grid{0xDD, 0xD8, 0xCC};
    Colour selected{0x2B, 0x3F, 0x8C};
    Colour hovered{0x8E, 0x9B, 0xCB};
    float line_width = 1.25F;  // pixels; larger on a screen of high density
    float grid_width = 1.0F;
    // For paper: lines in `ink` around faces of the paper's colour, without light, haze and ground;
    // what is translucent by its lines alone, which are thinner.
    bool is_line_drawing = false;
    Colour ink{0x00, 0x00, 0x00};

    bool operator==(const SceneStyle&) const = default;
};

}  // namespace engine

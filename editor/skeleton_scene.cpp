#include "editor/skeleton_scene.h"

#include "editor/dimension_values.h"
#include "editor/room_scene.h"
#include "model/resolve/piece_mesh.h"

#include <algorithm>
#include <array>
#include <numbers>
#include <utility>

namespace editor {
namespace {

using engine::Colour;
using model::Index;

// Brushed metal, told apart by stock: cool, warm, pale, dark, greenish.
constexpr std::array<Colour, 5> metals{Colour{0xD3, 0xD7, 0xDC}, Colour{0xDC, 0xD3, 0xC2},
                                       Colour{0xE8, 0xE9, 0xE8}, Colour{0xB4, 0xBA, 0xC2},
                                       Colour{0xC8, 0xD3, 0xCA}};
constexpr Colour metal_line{0x4A, 0x4D, 0x52};
constexpr Colour shim_colour{0xE3, 0xB9, 0x78};
constexpr Colour gusset_colour{0xF0, 0xF0, 0xEC};
constexpr Colour panel_colour{0xDE, 0xCD, 0xAC};
constexpr Colour fastener_colour{0x93, 0x97, 0x9D};
constexpr Colour fastener_line{0x4A, 0x4D, 0x52, 0xB0};

Colour colour_of(const model::Piece& piece) {
    if (piece.kind == model::PieceKind::shim) return shim_colour;
    if (piece.kind == model::PieceKind::gusset) return gusset_colour;
    if (piece.kind == model::PieceKind::panel) return panel_colour;
    return metals[piece.stock == model::no_index ? 0 : piece.stock % metals.size()];
}

engine::SceneData emptied(engine::SceneData scene) {
    for (auto* batch : {&scene.solid, &scene.translucent}) {
        batch->items.clear();
        batch->mesh.vertices.clear();
        batch->mesh.triangles.clear();
        batch->mesh.edges.clear();
    }
    scene.revision = 0;
    scene.ground = {};
    return scene;
}

}  // namespace

engine::SceneData skeleton_scene(const model::Project& project,
                                 const model::Catalogue& catalogue,
                                 const model::Resolved& resolved,
                                 engine::SceneData memory) {
    engine::SceneData scene = emptied(std::move(memory));
    auto& solid = scene.solid;
    model::PieceMesher mesher{resolved, catalogue};
    mesher.reserve_for_all(solid.mesh);
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        mesher.append(solid.mesh, i);
        engine::close_item(
            solid, {.pick_id = i, .colour = colour_of(resolved.pieces[i]), .line = metal_line});
    }
    for (Index i = 0; i < resolved.fasteners.size(); ++i) {
        mesher.append_fastener(solid.mesh, i);
        engine::close_item(solid, {.colour = fastener_colour, .line = fastener_line});
    }
    add_room(scene.translucent, project, resolved);
    const auto pieces = engine::bounds_of(solid);
    const bool is_empty = engine::is_empty(pieces);
    scene.ground = engine::ground_below(is_empty ? engine::bounds_of(scene) : pieces,
                                        !is_metric(project.shown));
    return scene;
}

double front_turn(const model::Resolved& resolved) {
    if (resolved.frames.empty()) return 0.0;
    const int turns = resolved.frames.front().quarter_turns;
    const bool is_shared = std::ranges::all_of(
        resolved.frames,
        [turns](const model::ResolvedFrame& frame) { return frame.quarter_turns == turns; });
    return is_shared ? turns * std::numbers::pi / 2.0 : 0.0;
}

}  // namespace editor

#include "editor/view/skeleton_scene.h"

#include "engine/measure/tape.h"
#include "model/resolve/piece_mesh.h"

#include <array>

namespace editor {
namespace {

using engine::Colour;
using model::Index;

// Brushed metal, told apart by stock: cool, warm, pale, dark, greenish.
constexpr std::array<Colour, 5> metals{Colour{0xCE, 0xD2, 0xD7}, Colour{0xD6, 0xCE, 0xBF},
                                       Colour{0xE2, 0xE3, 0xE1}, Colour{0xAE, 0xB3, 0xBA},
                                       Colour{0xC2, 0xCC, 0xC4}};
constexpr Colour metal_line{0x5A, 0x5D, 0x62};
constexpr Colour shim_colour{0xE0, 0xB8, 0x7A};
constexpr Colour rivet_colour{0x84, 0x88, 0x8E};
constexpr Colour rivet_line{0x55, 0x58, 0x5D};

Colour colour_of(const model::Piece& piece) {
    if (piece.kind == model::PieceKind::shim) return shim_colour;
    return metals[piece.stock == model::no_index ? 0 : piece.stock % metals.size()];
}

bool uses_inches(const engine::TapeStyle& shown) {
    const auto unit = engine::bare_unit(shown);
    return unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
}

}  // namespace

engine::SceneData skeleton_scene(const Derived& derived, const model::Catalogue& catalogue) {
    const auto& resolved = derived.resolved;
    engine::SceneData scene;
    scene.revision = derived.revision;
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        engine::add_item(
            scene.solid, model::piece_mesh(resolved, catalogue, i),
            {.pick_id = i, .colour = colour_of(resolved.pieces[i]), .line = metal_line});
    }
    for (Index i = 0; i < resolved.fasteners.size(); ++i) {
        engine::add_item(scene.solid, model::fastener_mesh(resolved, catalogue, i),
                         {.colour = rivet_colour, .line = rivet_line});
    }
    scene.ground =
        engine::ground_below(engine::bounds_of(scene), uses_inches(derived.project->shown));
    return scene;
}

}  // namespace editor

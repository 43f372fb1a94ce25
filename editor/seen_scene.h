// The scene in the way it is seen: coloured, faint, pulled apart, cut through.
#pragma once

#include "editor/desk.h"
#include "editor/view/piece_colours.h"

#include <cstdint>
#include <memory>
#include <optional>

namespace editor {

// What was made for the last picture, and of what.
struct SeenMemo {
    std::uint64_t of_revision = 0;  // of the scene as it is
    std::shared_ptr<const engine::SceneBatch> of_fixed;
    WayOfSeeing way;
    Theme theme = Theme::light;
    bool is_plain = true;  // the scene as it is will do
    engine::SceneData scene;
    PieceColours colours;
    std::vector<glm::dvec3> moved;  // of each piece, mm; empty: none
    std::optional<CutThrough> cut;
    std::optional<std::uint64_t> cut_of_revision;  // of the picture's scene
    std::shared_ptr<const engine::SceneCut> cut_made;
    std::uint64_t made = 0;  // so many scenes
};

// What the view shows and what is picked in it. Where nothing is seen in any other way it is
// scene(desk) itself.
const engine::SceneData& seen_scene(Desk& desk);

// The same with what belongs to it.
const SeenMemo& seen(Desk& desk);

// The cut as the renderer takes it, of a scene without one.
std::shared_ptr<const engine::SceneCut> cut_of(const engine::SceneData& scene,
                                               const CutThrough& cut);

}  // namespace editor

// The room's obstacles as translucent shapes.
#pragma once

#include "engine/render/scene.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <optional>

namespace editor {

// Obstacles are picked by these; pieces by their index, which is far below.
inline constexpr engine::PickId first_obstacle_pick = 0x80000000U;

constexpr engine::PickId pick_of_obstacle(model::Index obstacle) {
    return first_obstacle_pick + obstacle;
}

// In Project::room; none for a piece and for nothing.
constexpr std::optional<model::Index> obstacle_of_pick(engine::PickId pick) {
    if (pick < first_obstacle_pick || pick == engine::no_pick) return std::nullopt;
    return static_cast<model::Index>(pick - first_obstacle_pick);
}

// One item for each obstacle; empty where its formulas give no shape. Of walls and ceilings the
// face towards the room, as far as it was measured, so that the room can be looked into from
// outside. What only stays clear has dashed edges and nearly no body. Scans are left out.
void add_room(engine::SceneBatch& batch,
              const model::Project& project,
              const model::Resolved& resolved);

}  // namespace editor

// The view of the skeleton: turn, move, zoom, point and choose; dimension tags lie over it.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/dimension_hand.h"
#include "editor/kit/scopes.h"
#include "editor/measured_line.h"
#include "editor/room_facts.h"
#include "editor/scan_placing.h"
#include "editor/selection.h"
#include "editor/view/seeing_state.h"
#include "editor/view/sketch_state.h"
#include "editor/view/view_state.h"
#include "engine/render/scene.h"

#include <imgui.h>

#include <optional>
#include <vector>

namespace editor {

// Stands in the draw lists for the picture of the scene, whatever texture that is: the window puts
// the real one in its place, so that the panels need no OpenGL.
ImTextureID scene_picture();

// The scene's emphasis for what is selected and under the pointer.
engine::SceneEmphasis emphasis_of(const Derived& derived,
                                  const Selection& selection,
                                  const ViewState& view);

struct ViewHands {
    ViewState& view;
    Selection& selection;
    DimensionHand& hand;
    bool picks_joints = false;  // a click where two members meet chooses their joint
    bool picks_obstacles = false;
    ScanPlacing* placing = nullptr;     // a click picks a point of this scan
    const RoomFacts* room = nullptr;    // where a chosen obstacle is come near to
    std::vector<MeasuredLine> lines{};  // what else is measured
    SeeingState* seeing = nullptr;
    SketchState* sketch = nullptr;  // laying out with the pointer, where that can be done
    const model::Catalogue* catalogue = nullptr;
};

std::optional<Change> draw_view(const Area& area,
                                const Derived& derived,
                                const engine::SceneData& scene,
                                ViewHands hands);

}  // namespace editor

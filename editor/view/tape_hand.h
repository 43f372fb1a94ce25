// A tape held between any two corners, holes, edges or faces in the view.
#pragma once

#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/view/seeing_state.h"
#include "editor/view/view_state.h"
#include "engine/render/scene.h"

#include <glm/vec2.hpp>

namespace editor {

struct TapeView {
    const Area& area;
    const Derived& derived;
    const engine::SceneData& scene;
    const ViewState& view;
};

// The pointer is over that pixel of the picture.
void point_tape(TapeHand& hand, const TapeView& in, glm::dvec2 pixel, float pixel_scale);

// A click: takes the first end, or the second one, with which the measure is taken.
void take_end(TapeHand& hand);

// What it is held to, and the last measure. Gives where the measure's label lies.
Area draw_tape_hand(const TapeHand& hand, const TapeView& in);

}  // namespace editor

// A tape held between any two corners, holes, edges or faces in the view.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/view/seeing_state.h"
#include "editor/view/view_state.h"
#include "engine/render/scene.h"
#include "model/catalogue/catalogue.h"

#include <glm/vec2.hpp>

#include <optional>

namespace editor {

struct TapeView {
    const Area& area;
    const Derived& derived;
    const engine::SceneData& scene;
    const ViewState& view;
    const model::Catalogue* catalogue = nullptr;  // none: no length can be typed
};

// The pointer is over that pixel of the picture.
void point_tape(TapeHand& hand, const TapeView& in, glm::dvec2 pixel, float pixel_scale);

// A click: takes the first end, or the second one, with which the measure is taken.
void take_end(TapeHand& hand);

// What it is held to, and the last measure, whose length can be typed. Gives where the measure's
// label lies.
Area draw_tape_hand(TapeHand& hand, const TapeView& in, std::optional<Change>& change);

}  // namespace editor

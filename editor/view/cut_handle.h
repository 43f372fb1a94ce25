// The plane of a cut in the view, with a tag that pulls it along its axis.
#pragma once

#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/view/seeing_state.h"
#include "editor/view/view_state.h"
#include "engine/render/scene.h"

namespace editor {

// Where the cut may be: not beyond what there is.
struct CutRange {
    model::Nm least = 0;
    model::Nm most = 0;
};
CutRange cut_range(const engine::SceneData& scene, model::Axis axis);

// Kept within the range and on a step of the tape.
model::Nm cut_place(double nm, const CutRange& range, const engine::TapeStyle& shown);

// Gives where the tag lies.
Area draw_cut_handle(const Area& area,
                     const Derived& derived,
                     const engine::SceneData& scene,
                     const ViewState& view,
                     SeeingState& seeing);

}  // namespace editor

// A quiet bar in the corner of the view: the ways to see, what each needs, and the legend.
#pragma once

#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/view/piece_colours.h"
#include "editor/view/seeing_state.h"
#include "editor/view/view_state.h"
#include "engine/render/scene.h"

#include <string_view>
#include <vector>

namespace editor {

struct SeeingBar {
    const Area& view;
    const Derived& derived;
    const engine::SceneData& scene;
    const std::vector<LegendRow>& legend;
    bool can_be_alone = false;
    bool has_panels = false;
};

// Gives the command that was pressed; empty when none.
std::string_view draw_seeing_bar(const SeeingBar& bar, SeeingState& seeing);

}  // namespace editor

// The marks of the pieces, written beside them in the view.
#pragma once

#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/view/view_state.h"
#include "engine/render/scene.h"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace editor {

struct MarkLabel {
    model::Index piece = 0;
    std::string text;
    Area at;
};

// Of the pieces that are seen and not behind others, the nearest first; each where it lies on
// nothing in `taken` and on no other label, and left out where it finds no such place.
std::vector<MarkLabel> mark_labels(const Area& area,
                                   const Derived& derived,
                                   const engine::SceneData& scene,
                                   const ViewState& view,
                                   std::vector<Area> taken);

// The labels, and for what they were placed.
struct MarkMemo {
    std::uint64_t revision = 0;
    std::shared_ptr<const engine::SceneCut> cut;
    engine::Camera camera;
    engine::Viewport viewport;
    Area area;
    std::vector<Area> taken;
    std::vector<MarkLabel> labels;
};

// Placed anew only where something is another one; not at all while the view is being turned.
void draw_mark_labels(const Area& area,
                      const Derived& derived,
                      const engine::SceneData& scene,
                      const ViewState& view,
                      const std::vector<Area>& taken,
                      std::shared_ptr<MarkMemo>& memo);

}  // namespace editor

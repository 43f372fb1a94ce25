// What of a scene is seen, and how: the same items in other colours, moved, faint or not at all.
#pragma once

#include "editor/derived.h"
#include "editor/kit/theme.h"
#include "editor/view/seeing_state.h"
#include "engine/render/scene.h"

#include <glm/vec3.hpp>

#include <span>
#include <vector>

namespace editor {

struct SeenParts {
    const Derived& derived;
    const WayOfSeeing& way;
    Theme theme = Theme::light;
    std::span<const engine::Colour> colours;  // of pieces; empty: as they are
    std::span<const glm::dvec3> moved;        // of pieces; empty: in their places
};

// `base` is the skeleton's scene. An old scene may be given whose memory is to be used again; its
// revision is left to the caller.
engine::SceneData seen_items(const engine::SceneData& base,
                             const SeenParts& parts,
                             engine::SceneData memory = {});

}  // namespace editor

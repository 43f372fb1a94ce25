// The layout planes of a frame in the view, each with its strip of tape: pull it and all that
// stands on the plane follows.
#pragma once

#include "editor/kit/scopes.h"
#include "editor/view/sketch_hand.h"

namespace editor {

// Keeps clear of what is `taken` of the view, and adds the tags to it.
std::optional<Change> draw_plane_tags(const Area& area,
                                      const SketchDesk& desk,
                                      std::vector<Area>& taken);

}  // namespace editor

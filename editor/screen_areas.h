// Where the panels lie in a window of any size.
#pragma once

#include "editor/kit/scopes.h"
#include "editor/ui_state.h"

namespace editor {

struct ScreenAreas {
    Area top;
    Area left;
    Area view;
    Area right;
    Area bottom;
};

// Widths that the user has set are kept as far as the view still has room.
ScreenAreas screen_areas(ImVec2 window, const UiState& ui);

}  // namespace editor

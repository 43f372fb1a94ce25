// Help that shows while the pointer rests on a thing: after a moment, beside what it belongs to,
// and never while something is typed.
#pragma once

#include "editor/kit/scopes.h"

#include <imgui.h>

namespace editor {

// A field has the keyboard.
bool is_typing();

// Whether the pointer has rested on the last item for long enough to be helped.
bool has_rested_on_item();

// It has not yet, but may have in one of the next frames.
bool is_help_awaited();

// A tooltip below the last item, or above it where there is no room; never over it. `content`: how
// large what is drawn in it will be.
class HelpScope : Scope {
public:
    explicit HelpScope(ImVec2 content);
    ~HelpScope() { ImGui::EndTooltip(); }
};

}  // namespace editor

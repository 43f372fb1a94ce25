#include "editor/screen_areas.h"

#include <algorithm>

namespace editor {
namespace {

// A panel's width in a narrow window: its share of it, down to what it needs.
float narrowed(float usual, float least, float window) {
    return std::clamp(window / scaled(1) * usual / 1200.0F, least, usual);
}

}  // namespace

ScreenAreas screen_areas(ImVec2 window, const UiState& ui) {
    const float top = scaled(53);
    const float bottom = window.y < scaled(760) ? scaled(120) : scaled(128);
    const float left_wanted = ui.left_width > 0
                                  ? ui.left_width
                                  : narrowed(row_of(ui.place).usual_width, 276.0F, window.x);
    const float right_wanted =
        ui.right_width > 0 ? ui.right_width : narrowed(326.0F, 262.0F, window.x);
    const float least_view = std::min(scaled(260), window.x * 0.3F);
    const float right = std::clamp(scaled(right_wanted), scaled(200),
                                   std::max(scaled(200), window.x - least_view - scaled(240)));
    const float left = std::clamp(scaled(left_wanted), scaled(200),
                                  std::max(scaled(200), window.x - least_view - right));
    const float middle = std::max(1.0F, window.y - top - bottom);
    const float view = std::max(1.0F, window.x - left - right);
    return {{0, 0, window.x, top},
            {0, top, left, middle},
            {left, top, view, middle},
            {left + view, top, right, middle},
            {0, top + middle, window.x, bottom}};
}

}  // namespace editor

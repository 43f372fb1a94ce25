#include "model/book/short_dimension.h"

namespace model {

void draw_short_dimension(
    engine::Page& page, double from, double to, double y, const std::string& words) {
    page.draw_line({from, y}, {to, y}, {.width = engine::thin_width});
    for (const double x : {from, to}) {
        // Oblique strokes end a short dimension line (ISO 129-1, from memory).
        page.draw_line({x - 0.9, y + 0.9}, {x + 0.9, y - 0.9}, {.width = engine::narrow_width});
    }
    const bool is_left = to < from;
    page.draw_text({is_left ? to - 1.5 : to + 1.5, y + 1.2}, words,
                   {.size = 3.4,
                    .anchor = is_left ? engine::TextAnchor::end : engine::TextAnchor::start,
                    .has_ground = true});
}

}  // namespace model

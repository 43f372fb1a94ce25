#include "model/book/mark_signs.h"

#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace model {
namespace {

using engine::Page;
using engine::PagePoint;
using engine::Pen;

constexpr Pen pen{.width = engine::narrow_width};

std::vector<PagePoint> corners_around(PagePoint at, double reach, int count, double first_deg) {
    std::vector<PagePoint> corners;
    for (int i = 0; i < count; ++i) {
        const double angle = (first_deg + 360.0 * i / count) * std::numbers::pi / 180.0;
        corners.push_back({at.x + reach * std::cos(angle), at.y + reach * std::sin(angle)});
    }
    return corners;
}

void draw_cross(Page& page, PagePoint at, double reach) {
    page.draw_lines({{{{at.x - reach, at.y}, {at.x + reach, at.y}}},
                     {{{at.x, at.y - reach}, {at.x, at.y + reach}}}},
                    {.width = engine::thin_width});
}

void draw_diagonals(Page& page, PagePoint at, double reach) {
    page.draw_lines({{{{at.x - reach, at.y - reach}, {at.x + reach, at.y + reach}}},
                     {{{at.x - reach, at.y + reach}, {at.x + reach, at.y - reach}}}},
                    {.width = engine::thin_width});
}

// A pennant on the hole: drilled where the parts are put together (as ISO 5845-1 marks holes that
// are not drilled in the shop, from memory).
void draw_flag(Page& page, PagePoint at, double radius) {
    const PagePoint foot{at.x + 0.7 * radius, at.y - 0.7 * radius};
    const PagePoint top{foot.x + 1.2, foot.y - 1.8};
    page.draw_line(foot, top, {.width = engine::thin_width});
    page.draw_polygon({top, {top.x + 1.5, top.y + 0.3}, {top.x - 0.45, top.y + 1.2}},
                      engine::filled(engine::Ink::black));
}

}  // namespace

void draw_hole_sign(Page& page, const PaperHole& hole) {
    const auto& [at, radius, sign, is_matched] = hole;
    page.draw_circle(at, radius, {.pen = pen});
    switch (sign) {
        case HoleSign::rivet:
            draw_cross(page, at, radius + 1.0);
            break;
        case HoleSign::tapped:
            // Three quarters of a circle outside of the hole stand for the thread, open at the
            // upper right (ISO 6410-1, from memory).
            page.draw_arc(at, radius + 0.8, 90.0, 270.0, pen);
            break;
        case HoleSign::screw:
            page.draw_polygon(corners_around(at, radius + 1.1, 6, 0.0), {.pen = pen});
            break;
        case HoleSign::rivet_nut:
            page.draw_polygon(corners_around(at, 1.414 * (radius + 0.7), 4, 45.0), {.pen = pen});
            break;
        case HoleSign::countersunk:
            page.draw_circle(at, radius + 0.8, {.pen = pen});
            break;
        case HoleSign::van:
            draw_diagonals(page, at, radius + 0.6);
            break;
    }
    if (is_matched) draw_flag(page, at, radius);
}

}  // namespace model

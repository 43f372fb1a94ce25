#include "model/book/strip_ruler.h"

#include "model/book/letter_sizes.h"

#include <array>
#include <string>
#include <utility>
#include <vector>

namespace model {
namespace {

using engine::PagePoint;
using engine::Pen;
using engine::TextAnchor;

constexpr double line_gap = 8.5;  // from the ruler in millimetres to that in inches
constexpr Pen pen{.width = engine::thin_width};

struct Ruler {
    double length = 0.0;  // mm
    int marks = 0;        // along all of it
    int big = 1;          // marks from one number to the next
    double number = 1.0;  // for each mark
    const char* unit = "";
};

constexpr std::array<Ruler, 2> rulers{Ruler{100.0, 20, 4, 5.0, "mm"},
                                      Ruler{101.6, 16, 4, 0.25, "in"}};

// A ruler across, or down the page; `scale` is what the printer makes of its length.
void draw_ruler(engine::Page& page, const Ruler& ruler, PagePoint from, bool down, double scale) {
    const auto at = [&](double along, double off) {
        const double placed = along / scale;
        return down ? PagePoint{from.x - off, from.y + placed}
                    : PagePoint{from.x + placed, from.y - off};
    };
    page.draw_line(at(0.0, 0.0), at(ruler.length, 0.0), {.width = engine::narrow_width});
    std::vector<std::array<PagePoint, 2>> ticks;
    const double step = ruler.length / ruler.marks;
    for (int i = 0; i <= ruler.marks; ++i) {
        const bool is_big = i % ruler.big == 0;
        ticks.push_back({at(step * i, 0.0), at(step * i, is_big ? 2.6 : 1.5)});
        if (!is_big) continue;
        std::string words = std::to_string(static_cast<int>(ruler.number * i));
        if (i == ruler.marks) words += std::string(" ") + ruler.unit;
        page.draw_text(
            at(step * i, 3.2), words,
            {.size = strip_letters, .anchor = TextAnchor::middle, .turned_deg = down ? 90.0 : 0.0});
    }
    page.draw_lines(std::move(ticks), pen);
}

}  // namespace

void draw_rulers(engine::Page& page, const PrinterScale& printer) {
    const double left = strip_margin + ruler_room;
    const double foot = page.size().height - strip_margin;
    const double top = strip_margin + strip_sheet_head + 2.0;
    double off = 0.0;
    for (const auto& ruler : rulers) {
        draw_ruler(page, ruler, {left, foot - 1.0 - off}, false, printer.across);
        draw_ruler(page, ruler, {strip_margin + ruler_room - 3.0 - off, top}, true, printer.down);
        off += line_gap;
    }
}

}  // namespace model

// A page of paper that is drawn once, in millimetres from its top left corner (x to the right, y
// down), and then written as any kind of file: a plain value, which tests compare. 1 unit is 1 mm
// exactly.
#pragma once

#include "engine/drawing/hatch_lines.h"
#include "engine/drawing/page_items.h"
#include "engine/drawing/paper.h"

#include <array>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

class Page {
public:
    explicit Page(PaperSize size) : size_{size} {}
    explicit Page(Paper paper, PaperTurn turn = PaperTurn::portrait)
        : size_{paper_size(paper, turn)} {}

    PaperSize size() const { return size_; }
    const std::vector<PageItem>& items() const { return items_; }

    void draw_line(PagePoint from, PagePoint to, const Pen& pen = {});
    // Many lines as one thing, which costs far less than one by one.
    void draw_lines(std::vector<std::array<PagePoint, 2>> lines, const Pen& pen = {});
    // Fewer than two points draw nothing.
    void draw_polyline(std::vector<PagePoint> points, const Pen& pen = {});
    // Closes by itself. Parts that it covers twice are left empty.
    void draw_polygon(std::vector<PagePoint> corners, const Paint& paint = {});
    void draw_rectangle(const PageBox& box, const Paint& paint = {});
    void draw_circle(PagePoint centre, double radius, const Paint& paint = {});
    // From an angle on by `sweep_deg`, anticlockwise as seen, clockwise where that is negative; 0
    // deg lies at three o'clock.
    void draw_arc(
        PagePoint centre, double radius, double from_deg, double sweep_deg, const Pen& pen = {});
    // Lines inside of a polygon, or of what lies between several, as a wall does between the
    // outside and the inside of a tube. Neighbours that are hatched alike share their lines.
    void draw_hatch(const PageBox& box, const Hatching& hatching = {});
    void draw_hatch(const std::vector<std::vector<PagePoint>>& polygons,
                    const Hatching& hatching = {});
    // One line of text, `at` on its baseline; printable_text tells what becomes of line breaks and
    // of bytes that are no text.
    void draw_text(PagePoint at, std::string_view text, const Lettering& lettering = {});
    // What `draw` draws on this page is seen inside of the box alone.
    void draw_clipped(const PageBox& box, const std::function<void()>& draw);

    // What could not be drawn, the first of it in one sentence: a number that is none, or is too
    // large or too small to print. No file is made of such a page: better no drawing than one that
    // lacks a line.
    const std::optional<std::string>& fault() const { return fault_; }

    bool operator==(const Page&) const = default;

private:
    bool is_sound(bool is_so, std::string_view what);
    bool is_sound(const Paint& paint, std::string_view what);

    PaperSize size_;
    std::vector<PageItem> items_;
    std::optional<std::string> fault_;
};

}  // namespace engine

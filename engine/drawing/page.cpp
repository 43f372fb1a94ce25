#include "engine/drawing/page.h"

#include "engine/drawing/printable_text.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace engine {
namespace {

// mm, and degrees: what no page needs and every kind of file can still hold.
constexpr double farthest = 10'000.0;
constexpr double least_width = 0.01;  // mm; what is finer is not seen

bool is_number(double value) { return std::isfinite(value) && std::abs(value) <= farthest; }
bool is_size(double value) { return is_number(value) && value >= least_width; }
bool is_point(PagePoint p) { return is_number(p.x) && is_number(p.y); }
bool are_points(const std::vector<PagePoint>& points) {
    return std::all_of(points.begin(), points.end(), is_point);
}
bool is_box(const PageBox& box) {
    return is_point({box.left, box.top}) && is_number(box.width) && is_number(box.height) &&
           box.width >= 0 && box.height >= 0;
}

std::vector<PagePoint> corners_of(const PageBox& box) {
    const double right = box.left + box.width;
    const double bottom = box.top + box.height;
    return {{box.left, box.top}, {right, box.top}, {right, bottom}, {box.left, bottom}};
}

// 0 to below 360.
double within_one_turn(double deg) {
    const double rest = std::fmod(deg, 360.0);
    return rest < 0 ? rest + 360.0 : rest;
}

// What the capitals of a text cover, and a margin; letters that hang below the line are in it.
std::vector<PagePoint> ground_of(PagePoint at, std::string_view text, const Lettering& look) {
    const double margin = 0.25 * look.size;
    const double width = text_width(text, look.size, look.weight);
    const double left = -margin - before_anchor(width, look.anchor);
    const PageBox level{left, -capital_height(look.size, look.weight) - margin, width + 2 * margin,
                        capital_height(look.size, look.weight) + 2 * margin};
    const double angle = look.turned_deg * std::numbers::pi / 180.0;
    std::vector<PagePoint> corners;
    for (const PagePoint& p : corners_of(level)) {
        corners.push_back({at.x + p.x * std::cos(angle) + p.y * std::sin(angle),
                           at.y + p.y * std::cos(angle) - p.x * std::sin(angle)});
    }
    return corners;
}

}  // namespace

PagePoint point_on_arc(const DrawnArc& arc, double deg) {
    const double angle = deg * std::numbers::pi / 180.0;
    return {arc.centre.x + arc.radius * std::cos(angle),
            arc.centre.y - arc.radius * std::sin(angle)};
}

bool Page::is_sound(bool is_so, std::string_view what) {
    if (!is_so && !fault_) {
        fault_ = std::string(what) +
                 " cannot be drawn: its place or a size of it is no number, or is too large or "
                 "too small to print";
    }
    return is_so;
}

bool Page::is_sound(const Paint& paint, std::string_view what) {
    return is_sound(!paint.pen || is_size(paint.pen->width), what);
}

void Page::draw_line(PagePoint from, PagePoint to, const Pen& pen) {
    if (!is_sound(is_point(from) && is_point(to) && is_size(pen.width), "a line")) return;
    items_.push_back(DrawnLines{{{from, to}}, pen});
}

void Page::draw_lines(std::vector<std::array<PagePoint, 2>> lines, const Pen& pen) {
    const auto is_line = [](const std::array<PagePoint, 2>& line) {
        return is_point(line[0]) && is_point(line[1]);
    };
    if (!is_sound(std::all_of(lines.begin(), lines.end(), is_line) && is_size(pen.width), "lines"))
        return;
    if (!lines.empty()) items_.push_back(DrawnLines{std::move(lines), pen});
}

void Page::draw_polyline(std::vector<PagePoint> points, const Pen& pen) {
    if (!is_sound(are_points(points) && is_size(pen.width), "a line of several points")) return;
    if (points.size() < 2) return;
    items_.push_back(DrawnPath{std::move(points), false, {.pen = pen}});
}

void Page::draw_polygon(std::vector<PagePoint> corners, const Paint& paint) {
    if (!is_sound(are_points(corners), "a polygon") || !is_sound(paint, "a polygon")) return;
    if (corners.size() < 2) return;
    items_.push_back(DrawnPath{std::move(corners), true, paint});
}

void Page::draw_rectangle(const PageBox& box, const Paint& paint) {
    if (!is_sound(is_box(box), "a rectangle") || !is_sound(paint, "a rectangle")) return;
    items_.push_back(DrawnPath{corners_of(box), true, paint});
}

void Page::draw_circle(PagePoint centre, double radius, const Paint& paint) {
    if (!is_sound(is_point(centre) && is_size(radius), "a circle")) return;
    if (!is_sound(paint, "a circle")) return;
    items_.push_back(DrawnArc{centre, radius, 0.0, 360.0, paint});
}

void Page::draw_arc(
    PagePoint centre, double radius, double from_deg, double sweep_deg, const Pen& pen) {
    const bool is_so = is_point(centre) && is_size(radius) && is_number(from_deg) &&
                       is_number(sweep_deg) && is_size(pen.width);
    if (!is_sound(is_so, "an arc") || sweep_deg == 0) return;
    const double first = sweep_deg < 0 ? from_deg + sweep_deg : from_deg;
    items_.push_back(DrawnArc{centre,
                              radius,
                              within_one_turn(first),
                              std::min(std::abs(sweep_deg), 360.0),
                              {.pen = pen}});
}

void Page::draw_hatch(const PageBox& box, const Hatching& hatching) {
    if (!is_sound(is_box(box), "a hatch")) return;
    draw_hatch({corners_of(box)}, hatching);
}

void Page::draw_hatch(const std::vector<std::vector<PagePoint>>& polygons,
                      const Hatching& hatching) {
    const bool is_so = std::all_of(polygons.begin(), polygons.end(), are_points) &&
                       is_number(hatching.spacing) && hatching.spacing >= least_hatch_spacing &&
                       is_number(hatching.angle_deg) && is_size(hatching.pen.width);
    if (!is_sound(is_so, "a hatch")) return;
    auto lines = hatch_lines(polygons, hatching);
    if (!lines.empty()) items_.push_back(DrawnLines{std::move(lines), hatching.pen});
}

void Page::draw_text(PagePoint at, std::string_view text, const Lettering& lettering) {
    std::string printable = printable_text(text);
    const bool is_so = is_point(at) && is_size(lettering.size) && is_number(lettering.turned_deg);
    if (!is_so) {
        is_sound(false, "the text \"" + printable + "\"");
        return;
    }
    if (printable.empty()) return;
    if (lettering.has_ground)
        items_.push_back(DrawnPath{ground_of(at, printable, lettering), true, filled(Ink::white)});
    items_.push_back(DrawnText{at, std::move(printable), lettering});
}

void Page::draw_clipped(const PageBox& box, const std::function<void()>& draw) {
    if (!is_sound(is_box(box), "what lies in a clipping box")) return;
    items_.push_back(ClipBegin{box});
    draw();
    items_.push_back(ClipEnd{});
}

}  // namespace engine

// What a page is made of once it is drawn: few kinds of things, which every kind of file knows.
// Millimetres from the page's top left corner, x to the right and y down.
#pragma once

#include "engine/drawing/ink.h"
#include "engine/drawing/lettering.h"

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace engine {

struct PagePoint {
    double x = 0;
    double y = 0;

    bool operator==(const PagePoint&) const = default;
};

struct PageBox {
    double left = 0;
    double top = 0;
    double width = 0;
    double height = 0;

    bool operator==(const PageBox&) const = default;
};

// How something with an inside is drawn: filled first, then outlined. Without a fill it covers
// nothing.
struct Paint {
    std::optional<Pen> pen = Pen{};
    std::optional<Ink> fill;

    bool operator==(const Paint&) const = default;
};

inline Paint filled(Ink ink) { return {.pen = std::nullopt, .fill = ink}; }

// At least two points, of which the last one is joined to the first one where it is closed.
struct DrawnPath {
    std::vector<PagePoint> points;
    bool is_closed = false;
    Paint paint;

    bool operator==(const DrawnPath&) const = default;
};

// Part of a circle, or a whole one, which alone may be filled. Angles as seen: anticlockwise from
// three o'clock.
struct DrawnArc {
    PagePoint centre;
    double radius = 0;     // mm
    double from_deg = 0;   // 0 to 360
    double sweep_deg = 0;  // above 0, 360: a whole circle
    Paint paint;

    bool operator==(const DrawnArc&) const = default;
};

// Lines drawn together, such as a hatch.
struct DrawnLines {
    std::vector<std::array<PagePoint, 2>> lines;
    Pen pen;

    bool operator==(const DrawnLines&) const = default;
};

struct DrawnText {
    PagePoint at;
    std::string text;  // printable
    Lettering lettering;

    bool operator==(const DrawnText&) const = default;
};

// What follows is seen inside of the box, and of those begun before it, until its end.
struct ClipBegin {
    PageBox box;

    bool operator==(const ClipBegin&) const = default;
};

struct ClipEnd {
    bool operator==(const ClipEnd&) const = default;
};

using PageItem = std::variant<DrawnPath, DrawnArc, DrawnLines, DrawnText, ClipBegin, ClipEnd>;

// Where an angle of an arc lies.
PagePoint point_on_arc(const DrawnArc& arc, double deg);

}  // namespace engine

// Shapes at full size for machines that cut and mark sheet, as DXF files of release 12, the oldest
// that all of them read.
#pragma once

#include "engine/drawing/page_items.h"
#include "engine/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace engine {

// What a line is for tells its layer, by our own names.
enum class DxfLayer {
    outline,  // OUTLINE: cut around the part
    cut_out,  // CUT_OUT: cut away within it
    hole,     // HOLE: circles to drill
    tapped,   // HOLE_TAP: to drill and tap
    matched,  // HOLE_MATCH: drilled later, through what they are joined to
    fold,     // FOLD: edges of a bar that was laid flat; never cut
    words     // WORDS: for the eye alone
};

std::string_view name_of(DxfLayer layer);

struct DxfLoop {
    DxfLayer layer = DxfLayer::outline;
    std::vector<PagePoint> corners;  // the last one is joined to the first one
};

struct DxfCircle {
    DxfLayer layer = DxfLayer::hole;
    PagePoint centre;
    double radius = 0.0;
};

struct DxfLine {
    DxfLayer layer = DxfLayer::fold;
    PagePoint from;
    PagePoint to;
};

struct DxfText {
    PagePoint at;  // its lower left corner
    double height = 5.0;
    std::string words;  // what is not ASCII is written as the release tells, \U+00D8
};

// Millimetres; x to the right and y UP, as such machines have it.
struct DxfDrawing {
    std::vector<DxfLoop> loops;
    std::vector<DxfCircle> circles;
    std::vector<DxfLine> lines;
    std::vector<DxfText> texts;
};

// The same bytes for the same drawing. Errors: invalid_value for a number that is none, a loop of
// fewer than three corners, and a circle without a radius.
Result<std::string> dxf_text(const DxfDrawing& drawing);

}  // namespace engine

// Draws the items of pages with cairo, whose unit is 1 mm by then.
#pragma once

#include "engine/drawing/page_items.h"
#include "engine/drawing/pdf_fonts.h"

#include <cairo.h>

namespace engine {

class PdfPainter {
public:
    explicit PdfPainter(cairo_t* context) : context_{context} {}

    void operator()(const DrawnPath& path);
    void operator()(const DrawnArc& arc);
    void operator()(const DrawnLines& lines);
    void operator()(const DrawnText& text);
    void operator()(const ClipBegin& clip);
    void operator()(const ClipEnd& clip);

private:
    void take(Ink ink);
    void stroke(const Pen& pen);
    void fill_and_stroke(const Paint& paint);
    void show(const TextRun& run, double size);

    cairo_t* context_;
    PdfFonts fonts_;
    bool is_odd_text_ = false;
};

}  // namespace engine

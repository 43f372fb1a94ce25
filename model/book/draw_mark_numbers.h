// The numbers around the drawing of a mark, each led to what it tells of.
#pragma once

#include "engine/drawing/page.h"
#include "model/book/mark_facts.h"
#include "model/book/mark_layout.h"

namespace model {

// Where a mark's piece lies on the page, mm.
struct PlacedMark {
    const MarkFacts* facts = nullptr;
    const MarkLayout* layout = nullptr;
    double left = 0.0;  // upper left corner of the piece
    double top = 0.0;
    double outer_left = 0.0;  // of all that it takes

    double x(double across) const { return left + across / layout->scale; }
    double y(double along) const { return top + layout->lengthwise.at(along); }
    double right() const { return left + layout->piece_width; }
    double bottom() const { return top + layout->lengthwise.height(); }
};

void draw_mark_numbers(engine::Page& page, const PlacedMark& placed);

}  // namespace model

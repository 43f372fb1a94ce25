// Draws one paper of a drill strip at full size.
#pragma once

#include "engine/drawing/page.h"
#include "model/book/strip_labels.h"
#include "model/book/strip_packing.h"
#include "model/book/strip_words.h"

namespace model {

struct StripDrawing {
    StripPart part;
    StripLabels labels;
};

inline constexpr double strip_head = 13.5;  // mm of paper above a tile and its tab, for words
inline constexpr double strip_foot = 6.0;   // and below

// mm of paper, head and foot with it.
PackedSize size_of(const StripDrawing& strip);

// `at`: the upper left corner of its paper.
void draw_strip(engine::Page& page, engine::PagePoint at, const StripDrawing& strip);

}  // namespace model

// Draws the piece of a mark as it was laid out.
#pragma once

#include "engine/drawing/page.h"
#include "model/book/mark_layout.h"

namespace model {

// `at`: the upper left corner of all that it takes.
void draw_mark(engine::Page& page,
               engine::PagePoint at,
               const Resolved& resolved,
               const MarkFacts& facts,
               const MarkLayout& layout);

}  // namespace model

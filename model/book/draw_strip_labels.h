// Draws the words that stay with a paper of a drill strip when it is cut out.
#pragma once

#include "engine/drawing/page.h"
#include "model/book/strip_labels.h"

namespace model {

// `at`: the upper left corner of the paper, without its tab.
void draw_strip_labels(engine::Page& page, engine::PagePoint at, const StripLabels& labels);

}  // namespace model

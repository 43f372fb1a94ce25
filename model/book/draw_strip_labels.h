// Draws the words that stay with a paper of a drill strip when it is cut out.
#pragma once

#include "engine/drawing/page.h"
#include "model/book/strip_labels.h"

#include <array>
#include <vector>

namespace model {

// `at`: the upper left corner of the paper, without its tab.
void draw_strip_labels(engine::Page& page, engine::PagePoint at, const StripLabels& labels);

// Where level words lie across that line down the paper, from and to by rising place from its upper
// edge, mm: what is drawn there is broken.
std::vector<std::array<double, 2>> words_across(const StripLabels& labels, double fold);

}  // namespace model

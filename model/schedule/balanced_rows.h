// Rows that go on over pages: the last page does not have a row or two for itself.
#pragma once

#include "model/schedule/page_flow.h"

#include <cstddef>
#include <functional>

namespace model {

// Draws a row where the flow stands, on a new page where it must; `is_top` tells that the flow was
// brought to a new page for it, or that it is the first.
using DrawRow = std::function<void(std::size_t row, bool is_top)>;

// Of more than one page the last one holds four rows or more: the one before it ends so much
// earlier, but keeps two.
void draw_balanced(PageFlow& flow, std::size_t count, const DrawRow& draw);

}  // namespace model

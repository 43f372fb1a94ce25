// Which kinds of work a project asks for, and what is said where each begins.
#pragma once

#include "model/book/book_pages.h"
#include "model/resolve/resolved.h"
#include "model/schedule/cautions.h"

#include <initializer_list>

namespace model {

// Cutting, deburring and drilling into the van: there is a piece. What is built is fixed in the van
// whether the project has the holes for that or not.
bool has_work(const Resolved& resolved, Work work);

// The cautions of those kinds that there are.
void draw_cautions(PageFlow& flow, const Resolved& resolved, std::initializer_list<Work> works);

}  // namespace model

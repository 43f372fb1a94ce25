// A joint cut through: what is cut hatched, the fastener whole, with its head and its tail.
#pragma once

#include "engine/drawing/page.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <string>

namespace model {

// Draws the section of a joint that has a fastener into the box, as large as one of the usual
// scales allows, and gives that in words: "2 : 1".
std::string draw_corner_section(engine::Page& page,
                                const engine::PageBox& box,
                                const Project& project,
                                const Catalogue& catalogue,
                                const Resolved& resolved,
                                Index joint);

}  // namespace model

// A frame on paper: from the front, the left and above with the places of its planes, and pulled
// apart.
#pragma once

#include "engine/drawing/page.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <string>
#include <vector>

namespace model {

struct FramePage {
    std::string title;  // "Front"
    engine::Page page;
};

// Nothing of a frame without pieces.
std::vector<FramePage> view_pages(const Project& project,
                                  const Resolved& resolved,
                                  Index frame,
                                  engine::Paper paper);

// "A1", "A1 opp." for the opposite hand; empty for a piece without a mark.
std::string mark_on_drawing(const Resolved& resolved, const Piece& piece);

}  // namespace model

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

}  // namespace model

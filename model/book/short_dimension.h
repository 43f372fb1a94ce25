// A level dimension that has no room for its words between its ends.
#pragma once

#include "engine/drawing/page.h"

#include <string>

namespace model {

// The words stand beyond `to`, to the left or to the right. All in mm on the page.
void draw_short_dimension(
    engine::Page& page, double from, double to, double y, const std::string& words);

}  // namespace model

// A short dimension line over the view, with what it measures.
#pragma once

#include "engine/geometry/placement.h"

#include <string>

namespace editor {

struct MeasuredLine {
    std::string name;  // by which tests find it
    engine::Vector from{};
    engine::Vector to{};  // mm in the room
    std::string text;
};

}  // namespace editor

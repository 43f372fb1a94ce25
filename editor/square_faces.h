// The faces whose diagonals prove with a tape that a frame is square, and where they lie.
#pragma once

#include "editor/derived.h"
#include "editor/measured_line.h"
#include "model/schedule/square.h"

#include <array>
#include <string>
#include <vector>

namespace editor {

struct SquareFace {
    model::SquareRow row;
    // In the room, mm: from the lower left corner to the upper right one, and the other way.
    std::array<std::array<engine::Vector, 2>, 2> diagonals{};
};

std::vector<SquareFace> square_faces(const Derived& derived);

// "left to right, bottom to top".
std::string between_words(const model::SquareRow& row);

// Both diagonals; only the first one is labelled: they are to be alike.
std::array<MeasuredLine, 2> lines_of(const SquareFace& face, const Derived& derived);

}  // namespace editor

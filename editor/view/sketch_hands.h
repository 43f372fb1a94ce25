// The hands for laying out, in one table: the row in the view and the commands read it.
#pragma once

#include "editor/view/sketch_state.h"

#include <array>

namespace editor {

struct SketchHandRow {
    SketchHand hand = SketchHand::none;
    const char* label = "";
    const char* hint = "";
    const char* help = "";  // while it is at work
};

inline constexpr std::array<SketchHandRow, 4> sketch_hands{
    {{SketchHand::members, "Put members", "Bars onto the lines where two layout planes meet",
      "Click a line for a bar between its nodes, drag along it for a longer one, Shift for the "
      "whole line. A bar that is there is chosen. Esc to leave."},
     {SketchHand::braces, "Draw a brace", "Flat bar across a face, from node to node",
      "Drag from node to node across a face, or click one and then the other. Esc to leave."},
     {SketchHand::bays, "Paint bays", "Which spaces between the planes belong to the cabinet",
      "Click a space between planes, drag for more; Shift for the one behind. A bay that is there "
      "is chosen, and Delete removes it. Esc to leave."},
     {SketchHand::planes, "Set planes", "Move the layout planes, and put new ones between them",
      "Pull a plane's tag to move it, click the tag to type. Click a line where a new plane is to "
      "cross it. Esc to leave."}}};

constexpr const SketchHandRow& row_of(SketchHand hand) {
    for (const auto& row : sketch_hands) {
        if (row.hand == hand) return row;
    }
    return sketch_hands.front();
}

}  // namespace editor

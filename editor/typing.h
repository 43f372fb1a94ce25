// What is half typed into the places' fields, taken before the project is saved, exported or put
// away.
#pragma once

#include "editor/desk.h"

#include <string>

namespace editor {

// Takes it all into the project. What will not do stays in its field, with the reason beside it.
void take_typing(Desk& desk);

// Why something that was typed is not in the project: "width: there is no dimension widht"; empty
// when all of it is.
std::string refused_typing(const Desk& desk);

// Around the panels of one frame: what is half typed into a field that is no longer drawn is taken.
void begin_typing_frame(Desk& desk);
void end_typing_frame(Desk& desk);

}  // namespace editor

// Commands that lay out what is chosen in the view: turning, splitting, joining, repeating.
#pragma once

#include "editor/desk.h"
#include "model/project/project.h"

namespace editor {

// Of the members of the chosen pieces, as one step.
void flip_chosen_legs(Desk& desk, model::Axis along);
void turn_chosen_end_for_end(Desk& desk);

bool has_two_chosen_members(const Desk& desk);  // of one frame
void join_chosen_members(Desk& desk);

// Dialogs, filled in for what is chosen.
void begin_split(Desk& desk);
void begin_mirror(Desk& desk);
void begin_repeat(Desk& desk);
void begin_copy(Desk& desk);
void begin_take_out(Desk& desk, bool is_of_bay);

}  // namespace editor

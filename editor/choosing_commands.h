// What the commands do with what is chosen.
#pragma once

#include "editor/desk.h"
#include "editor/place_commands.h"

namespace editor {

bool has_something(const Desk& desk);  // chosen, in hand, or a way of seeing that can end
bool has_chosen_frame(const Desk& desk);
bool has_chosen_member(const Desk& desk);
bool has_chosen_obstacle(const Desk& desk);

void remove_members(Desk& desk);
// The last thing begun first; with nothing begun all that is chosen.
void let_go(Desk& desk);

template <ObstacleKind kind>
void begin_obstacle(Desk& desk) {
    open_in_measure(desk, new_obstacle_form(derived(desk), kind));
}
void change_obstacle(Desk& desk);
void remove_obstacle(Desk& desk);

}  // namespace editor

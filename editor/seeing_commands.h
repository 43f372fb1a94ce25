// What the commands for seeing do: none of it is an edit.
#pragma once

#include "editor/desk.h"

namespace editor {

bool can_be_seen(const Desk& desk);  // there is something to look at
bool has_panels(const Desk& desk);
bool has_room(const Desk& desk);
bool has_pieces(const Desk& desk);
bool is_cut(const Desk& desk);
bool can_be_alone(const Desk& desk);       // a piece is chosen, or one is alone
bool is_seen_otherwise(const Desk& desk);  // than as it is

void see_through_room(Desk& desk);
void see_through_panels(Desk& desk);
void colour_by_next(Desk& desk);
void pull_apart_or_together(Desk& desk);

// Through the middle of what there is, across the axis along which it is looked at, so that the cut
// face is seen; or away with it.
void cut_through_or_not(Desk& desk);
void cut_along_next_axis(Desk& desk);
void turn_cut_over(Desk& desk);
CutThrough cut_through_middle(Desk& desk, model::Axis axis);

// The first chosen piece by itself, filling the view; or back to where all was seen from.
void see_alone_or_all(Desk& desk);

// That side of the cabinets that is across from it.
void see_from_across(Desk& desk, engine::ViewFrom from);

void take_measure_or_not(Desk& desk);
void see_as_it_is(Desk& desk);

// Ends what was begun last - a measure, a look at one piece - and tells whether there was any.
bool has_way_to_end(const Desk& desk);
bool end_way_of_seeing(Desk& desk);

// The piece that is looked at alone is the chosen one; one that is gone is not looked at.
void tend_seeing(Desk& desk);

}  // namespace editor

// What commands do with laying out in the view: take up a hand, give up, remove planes and bays.
#pragma once

#include "editor/desk.h"
#include "editor/view/sketch_hand.h"

namespace editor {

// Goes to the place where frames are laid out.
void begin_sketch(Desk& desk, SketchHand hand);

template <SketchHand hand>
void sketch_with(Desk& desk) {
    begin_sketch(desk, hand);
}

// Whether a hand is at work.
bool has_sketch(const Desk& desk);

// What is dragged, what is begun, then the hand; false where none is at work.
bool give_up_sketch(Desk& desk);

// Planes, bays, braces and leaning members that are chosen.
bool has_chosen_layout(const Desk& desk);
void remove_layout(Desk& desk);

}  // namespace editor

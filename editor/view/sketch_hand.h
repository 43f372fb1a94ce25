// What the pointer does with a laying-out hand: points, presses, drags and lets go. No window.
#pragma once

#include "editor/selection.h"
#include "editor/view/sketch_state.h"
#include "model/catalogue/catalogue.h"

namespace editor {

struct SketchPointer {
    glm::dvec2 pixel{0.0};
    double scale = 1.0;  // pixels to one design pixel
    bool is_over = false;
    bool is_pressed = false;   // just now
    bool is_released = false;  // just now
    bool is_wide = false;      // Shift: the whole line; the bay behind
};

struct SketchDesk {
    const Derived& derived;
    const model::Catalogue& catalogue;
    const ViewState& view;
    SketchState& state;
    Selection& selection;
};

// In the project's frames; none where there are none.
std::optional<std::size_t> sketched_frame(const Derived& derived, const SketchState& state);

// Of what members are made that are put now.
std::string sketched_stock(const Derived& derived, const SketchState& state);

std::optional<Change> use_pointer(const SketchDesk& desk, const SketchPointer& pointer);

// Takes up a hand; what the one before had begun is given up.
void take_hand(SketchState& state, SketchHand hand);

// One thing after the other: what is being dragged, what is begun, the hand itself.
void give_up(SketchState& state);

}  // namespace editor

// The dimension that the user's hand is on: half typed, or being dragged. The strip in the list and
// the tag in the view are the same thing, so they share this.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"

#include <glm/vec2.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace editor {

struct TypedFormula {
    std::string dimension;
    std::string strip;  // which strip shows the field: "list" or "view"
    std::string text;
    bool wants_focus = true;
    bool is_drawn = true;  // by the present frame, or not yet its turn
};

struct DraggedValue {
    std::string dimension;
    std::string strip;  // which strip the mouse holds
    engine::Quantity start;
    std::string merge_key;          // one for each drag
    glm::dvec2 pixels_per_mm{0.0};  // of the tag in the view, as it was seen last
};

// Why the last typed formula was not taken. The text waits here for the next time that the strip is
// clicked.
struct RefusedFormula {
    std::string dimension;
    std::string text;
    std::string reason;
};

// A strip that shows a dimension, in the order in which they are drawn.
struct DrawnStrip {
    std::string strip;
    std::string dimension;
};

struct DimensionHand {
    std::optional<TypedFormula> typed;
    std::optional<DraggedValue> dragged;
    std::optional<RefusedFormula> refused;
    std::vector<DrawnStrip> drawn;         // by the present frame, so far
    std::vector<DrawnStrip> drawn_before;  // by the one before it, all
    std::uint64_t drags = 0;               // counted, to give each its own merge key
};

// With the text that was refused last, where there is one, else with the dimension's formula.
void begin_typing(DimensionHand& hand, const model::Dimension& dimension, std::string strip);

// Ends the typing: the change to make, or none - with the reason in `refused` when the text will
// not do; the value then stays as it was. `keep_field` leaves the text there to be mended.
std::optional<Change> take_typed(DimensionHand& hand, const Derived& derived, bool keep_field);

// A formula's value moved by so many graduations, as a formula; unchanged when it has no value.
std::string nudged_formula(const Derived& derived,
                           const std::string& dimension,
                           const std::string& formula,
                           double steps);

// Begins a drag when the dimension has a value and is no formula; otherwise says why not.
void begin_drag(DimensionHand& hand,
                const Derived& derived,
                const model::Dimension& dimension,
                std::string strip);

// The change for a drag that has come this many steps from its start.
std::optional<Change> dragged_change(const DimensionHand& hand,
                                     const Derived& derived,
                                     double steps);

}  // namespace editor

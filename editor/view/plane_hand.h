// The layout plane that the user's hand is on: half typed, being dragged, or still to come.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/view/plane_snap.h"

#include <glm/vec2.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

struct TypedPlane {
    std::string frame;
    std::string plane;
    std::string text;
    bool wants_focus = true;
    bool is_drawn = true;  // by the present frame
};

struct DraggedPlane {
    std::string frame;
    std::string plane;
    model::Formula start_formula;  // of the plane, or of the dimension that it stands on
    model::Nm start = 0;
    std::string merge_key;          // one for each drag
    std::string snapped_to;         // in words; empty: a mark of the tape
    glm::dvec2 pixels_per_mm{0.0};  // as its tag was seen last
    std::vector<PlaneSnap> snaps;   // gathered when the drag began
};

// Why what was typed was not taken, or why a plane cannot be dragged.
struct RefusedPlane {
    std::string frame;
    std::string plane;
    std::string text;
    std::string reason;

    bool is_of(std::string_view other_frame, std::string_view other_plane) const {
        return frame == other_frame && plane == other_plane;
    }
};

struct PlaneHand {
    std::optional<TypedPlane> typed;
    std::optional<DraggedPlane> dragged;
    std::optional<RefusedPlane> refused;
    std::uint64_t drags = 0;   // counted, to give each its own merge key
    bool is_given_up = false;  // the button is still held from a drag that was given up
    // Those of a new plane along one axis, while it is pointed about; see sketch_target.cpp.
    WorkedOutOf snaps_of;
    std::size_t snaps_frame = 0;
    model::Axis snaps_axis = model::Axis::x;
    std::vector<PlaneSnap> snaps;
};

// The formula behind the plane: its own, or that of the dimension that alone is its position.
model::Formula formula_behind(const model::Project& project, const model::Plane& plane);

void begin_typing(PlaneHand& hand,
                  const Derived& derived,
                  const std::string& frame,
                  const std::string& plane);

// Ends the typing: the change to make, or none, with the reason in `refused` when the text will not
// do. `keep_field` leaves the text there to be mended.
std::optional<Change> take_typed(PlaneHand& hand, const Derived& derived, bool keep_field);

// Begins a drag where the plane stands on a plain value; otherwise says why not.
void begin_drag(PlaneHand& hand,
                const Derived& derived,
                const std::string& frame,
                const std::string& plane);

// The change for a drag that has come this far, and what it snapped to; `reach` is how far a snap
// pulls.
std::optional<Change> dragged_change(PlaneHand& hand,
                                     const Derived& derived,
                                     double by_mm,
                                     double reach_mm);

// Back to where the drag began; ends it.
std::optional<Change> given_up(PlaneHand& hand, const Derived& derived);

}  // namespace editor

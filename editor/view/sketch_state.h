// What is sketched in the view: which hand is at work, what it points at, what it has begun.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/view/plane_grid.h"
#include "editor/view/plane_hand.h"
#include "engine/render/scene.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace editor {

enum class SketchHand { none, members, braces, bays, planes };

// What the pointer is over.
struct SketchTarget {
    std::optional<GridSegment> segment;
    std::optional<GridNode> node;
    std::optional<GridCell> cell;
    std::optional<PlanePlace> place;  // of a plane that is to come

    bool is_something() const { return segment || node || cell; }
    bool operator==(const SketchTarget&) const = default;
};

struct SketchFinding {
    std::string text;
    bool is_error = false;
};

// What would come of a click.
struct SketchTrial {
    WorkedOutOf of;
    std::string key;                      // of what is pointed at
    std::optional<Change> change;         // none: there is nothing to be put
    std::string title;                    // "post front left"
    std::string words;                    // "angle 1 x 1 x 1/8, 30 in long"
    std::string refusal;                  // why it cannot be
    std::vector<SketchFinding> findings;  // that it would bring, and a line for those it would mend
    std::shared_ptr<const engine::SceneBatch> ghost;
    std::vector<model::Subject> chosen;  // afterwards, or by the click where nothing is put
};

// Since when the button is held.
struct SketchPress {
    SketchTarget target;
    std::optional<GridNode> node;  // a node that lay under the pointer too
    glm::dvec2 at{0.0};            // pixel
    bool has_moved = false;
    bool begins = false;  // the first node of a brace
};

struct SketchState {
    SketchHand hand = SketchHand::none;
    std::string frame;  // empty or gone: the project's first one
    std::string stock;  // of the members that are put; empty: the frame's usual one
    SketchTarget target;
    std::optional<SketchPress> pressed;
    std::optional<GridNode> begun;  // where a brace begins
    std::vector<GridCell> painted;  // since the button was pressed
    std::optional<SketchTrial> trial;
    PlaneHand planes;
    WorkedOutOf of;  // that was pointed into last, and the frame
    std::size_t of_frame = 0;
    Area bar;  // what its buttons and words cover of the view
};

}  // namespace editor

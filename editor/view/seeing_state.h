// How the view shows the skeleton and the room, and what was measured in it. None of it is an
// edit: it is never in the project and never undone.
#pragma once

#include "editor/history.h"
#include "editor/kit/scopes.h"
#include "editor/selection.h"
#include "engine/render/camera.h"
#include "model/resolve/resolved.h"

#include <glm/vec3.hpp>

#include <memory>
#include <optional>
#include <string>

namespace editor {

enum class Visible { plainly, faintly, hidden };

enum class ColourBy { metal, stock, mark, finding, clearance };

// What the picture is made of besides the project.
struct WayOfSeeing {
    Visible room = Visible::plainly;
    Visible panels = Visible::plainly;
    ColourBy colour_by = ColourBy::metal;
    float apart = 0.0F;              // 0: as built, 1: as far apart as they go
    std::optional<PieceName> alone;  // all others are faint
    bool as_line_drawing = false;    // black on white, for paper

    bool operator==(const WayOfSeeing&) const = default;
};

// A plane across an axis of the room; what lies on one side of it is not there to be seen.
struct CutThrough {
    model::Axis axis = model::Axis::y;
    model::Nm at = 0;
    bool keeps_low = false;  // what lies below the plane along the axis stays

    bool operator==(const CutThrough&) const = default;
};

enum class TapeOn { corner, edge, face, hole };

// What the tape is held to. All in the room, nm: whole numbers where the piece states them.
struct TapeEnd {
    TapeOn on = TapeOn::face;
    std::optional<model::Index> piece{};  // none: an obstacle
    std::string of;                       // "post left", or the obstacle
    glm::dvec3 at{0.0};                   // the place that was pointed at
    glm::dvec3 from{0.0};                 // of an edge
    glm::dvec3 to{0.0};
    glm::dvec3 normal{0.0};  // of a face

    bool operator==(const TapeEnd&) const = default;
};

struct TapeTaken {
    TapeEnd first;
    TapeEnd second;

    bool operator==(const TapeTaken&) const = default;
};

// The length that the last measure is to have, half typed.
struct TapeTyped {
    std::string text;
    bool wants_focus = true;
    bool is_drawn = true;  // by the present frame
};

// Why what was typed was not taken, or why nothing can be typed: then there is no text.
struct TapeRefused {
    std::string text;
    std::string reason;
};

// The last measure as it is in the project that its typed length makes.
struct TapeFollowing {
    Snapshot project;
    TapeTaken taken;
};

struct TapeHand {
    bool is_held = false;          // a click in the view takes an end
    std::optional<TapeEnd> under;  // the pointer
    std::optional<TapeEnd> first;
    std::optional<TapeTaken> taken;  // until the next is, or the project is another
    Revision of = 0;                 // of the project
    std::optional<TapeTyped> typed;
    std::optional<TapeRefused> refused;
    std::optional<TapeFollowing> following;  // until the change that was typed is made
};

struct MarkMemo;  // editor/view/mark_labels.h

struct SeeingState {
    WayOfSeeing way;
    std::optional<CutThrough> cut;
    std::string cut_typed;  // its place, while it is typed
    bool cut_wants_typing = false;
    std::optional<float> cut_pulled;  // pixels since the cut was taken hold of in the view
    model::Nm cut_before = 0;         // where it was then
    bool shows_marks = false;
    std::shared_ptr<MarkMemo> marks;  // as they were placed last
    engine::Camera camera_before;     // the piece was looked at alone
    TapeHand tape;
    std::optional<model::Index> hovered_hole;  // in Resolved::holes
    Area bar;                                  // on the screen, as it was drawn last
};

}  // namespace editor

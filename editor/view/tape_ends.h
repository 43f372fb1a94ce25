// What the tape can be held to, and what it then shows.
#pragma once

#include "editor/derived.h"
#include "editor/view/seeing_state.h"
#include "engine/render/pick.h"
#include "engine/render/scene.h"

#include <optional>
#include <string>

namespace editor {

struct TapeSight {
    const Derived& derived;
    const engine::SceneData& scene;  // as it is seen
    const engine::Camera& camera;
    engine::Viewport viewport;
    double reach = 9.0;  // pixels within which it holds to a corner, a hole or an edge
};

// The corner, edge or face under the pixel, the first of them that is near enough; or the hole
// where the pixel is nearer to its middle than to a corner or an edge.
std::optional<TapeEnd> tape_end_at(const TapeSight& sight, glm::dvec2 pixel);

// nm; whole where both ends are.
struct TapeReading {
    glm::dvec3 from{0.0};
    glm::dvec3 to{0.0};
    double length = 0.0;
    glm::dvec3 parts{0.0};  // along X, Y and Z of the room, none below 0
};

// The least between two ends: at right angles to a face, and between edges and corners as they are.
// Between faces that are not parallel, and an edge that runs into a face, it is what lies between
// the places pointed at.
TapeReading tape_reading(const TapeTaken& taken);

// "18 3/8", with "~" where it lies between two marks.
std::string tape_words(double nm, const engine::TapeStyle& shown);

// "corner of post left", "hole in post left", "edge of ...", "face of ...".
std::string words_of(const TapeEnd& end);

}  // namespace editor

// Where a plane goes through the closed shapes of a batch: their cut faces, filled and outlined.
#pragma once

#include "engine/render/scene.h"

#include <span>

namespace engine {

struct CutLook {
    Colour tint;         // mixed into the colour of what is cut
    double share = 0.5;  // of the tint
    Colour line;         // around each cut face
};

// One item for each one of the batch that the plane goes through, with its pick id. What only
// touches the plane from beyond it has no face. Shapes that are not closed get an outline alone:
// `is_filled` false.
void append_cut_faces(SceneCut& cut, const SceneBatch& batch, const CutLook& look, bool is_filled);

// A cut face as trapezoids: lines from left to right have the inside above them. Coordinates in the
// plane; for append_cut_faces and its test.
struct CutLine {
    double from[2];
    double to[2];
};
struct CutTrapezoid {
    double low = 0.0;
    double high = 0.0;
    double low_left = 0.0;
    double low_right = 0.0;
    double high_left = 0.0;
    double high_right = 0.0;
};
std::vector<CutTrapezoid> filled(std::span<const CutLine> outline);

}  // namespace engine

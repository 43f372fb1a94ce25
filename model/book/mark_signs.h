// Holes on paper by the same signs as in the window: lines alone tell them apart.
#pragma once

#include "engine/drawing/page.h"
#include "model/schedule/hole_sign.h"

namespace model {

struct PaperHole {
    engine::PagePoint at;
    double radius = 1.0;  // mm of paper
    HoleSign sign = HoleSign::rivet;
    bool is_matched = false;  // drilled through its mate
};

void draw_hole_sign(engine::Page& page, const PaperHole& hole);

}  // namespace model

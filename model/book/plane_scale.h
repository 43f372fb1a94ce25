// The places of a frame's planes along one side of a picture, all measured from the first of them:
// running dimensions, as ISO 129-1 has them (from memory).
#pragma once

#include "engine/drawing/page.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <string>
#include <vector>

namespace model {

struct PlanePlace {
    Nm at = 0;  // along the axis, in the frame
    engine::Length from_first;
    std::string words;  // "18 3/8 in  shelf, mid"
};

// Of all planes across the axis, rising; those in one place together.
std::vector<PlanePlace> plane_places(const Project& project,
                                     const Resolved& resolved,
                                     Index frame,
                                     Axis axis);

// How far the words reach from the picture, mm.
double plane_scale_room(const std::vector<PlanePlace>& places);

// Where a place lies on the page: across it for a scale below the picture, down it for one beside.
struct PlaneOnPage {
    const PlanePlace* place = nullptr;
    double at = 0.0;
};

// Below the picture, read from the right; or to the left of it.
void draw_plane_scale_below(engine::Page& page,
                            std::vector<PlaneOnPage> planes,
                            const engine::PageBox& picture);
void draw_plane_scale_beside(engine::Page& page,
                             std::vector<PlaneOnPage> planes,
                             const engine::PageBox& picture);

}  // namespace model

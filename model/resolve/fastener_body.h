// The room that a set fastener fills, and whether two of them run into each other.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

namespace model {

// How far the parts of a set fastener spread and stand out, its stack apart.
struct BodyShape {
    Nm head_radius = 0;
    Nm head_height = 0;
    Nm shank_radius = 0;
    Nm tail_radius = 0;  // of what stands beyond the stack
    Nm tail_length = 0;
};

// A blind rivet's formed tail is taken as 1.5 diameters across and one long (common practice), a
// nut by its corners, a rivet nut by its unset body. `far` is the thickness of the last plate.
BodyShape body_shape(const Catalogue& catalogue, const FastenerSpec& spec, Nm stack, Nm far);

// A fastener set in its stack. `at`, `axis` and `drive` as in Fastener.
struct FastenerBody {
    BodyShape shape;
    Point at{};
    std::uint8_t axis = 0;
    std::int8_t drive = 1;
    Nm grip = 0;
};

// Whether head, shank or tail of one enter those of the other. Exact for round parts whose axes lie
// along axes of the frame.
bool bodies_meet(const FastenerBody& a, const FastenerBody& b);

// How far from its axis, and how far from `at` along it, no part of the body reaches.
Nm body_reach(const FastenerBody& body);

}  // namespace model

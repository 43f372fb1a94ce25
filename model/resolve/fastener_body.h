// The room that a set fastener fills, and whether two of them run into each other.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

namespace model {

// A blind rivet set in its stack. `at`, `axis` and `drive` as in Fastener.
struct FastenerBody {
    const BlindRivet* rivet = nullptr;
    Point at{};
    std::uint8_t axis = 0;
    std::int8_t drive = 1;
    Nm grip = 0;
};

// Whether head, shank or formed tail of one enter those of the other. Exact for round parts whose
// axes lie along axes of the frame. The tail is taken as 1.5 diameters across and one long: common
// practice.
bool bodies_meet(const FastenerBody& a, const FastenerBody& b);

// How far from its axis, and how far from `at` along it, no part of the body reaches.
Nm body_reach(const FastenerBody& body);

}  // namespace model

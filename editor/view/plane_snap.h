// Where a layout plane that is dragged or put comes to rest: on a mark of the tape, where an
// obstacle and its clearance end, half-way between two planes, or level with another frame's plane.
#pragma once

#include "editor/derived.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace editor {

// A place worth stopping at, along an axis of a frame.
struct PlaneSnap {
    model::Nm at = 0;
    std::string words;  // "1/4 in from wheel well", "half-way from left to right"

    bool operator==(const PlaneSnap&) const = default;
};

// Where a plane is to be, and what it snapped to; no words: a mark of the tape.
struct PlanePlace {
    model::Nm at = 0;
    std::string words;

    bool operator==(const PlanePlace&) const = default;
};

// `moved` is the plane that is dragged, by which nothing is measured; empty: none.
std::vector<PlaneSnap> plane_snaps(const Derived& derived,
                                   std::size_t frame,
                                   model::Axis axis,
                                   std::string_view moved);

// The nearest snap within reach, else the nearest step of the tape.
PlanePlace snapped(model::Nm at,
                   std::span<const PlaneSnap> snaps,
                   model::Nm reach,
                   const engine::TapeStyle& shown);

}  // namespace editor

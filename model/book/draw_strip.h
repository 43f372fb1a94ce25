// Draws one paper of a drill strip at full size.
#pragma once

#include "engine/drawing/page.h"
#include "model/book/drill_strips.h"
#include "model/book/strip_packing.h"
#include "model/book/strip_tiles.h"

#include <string>

namespace model {

// What a tile needs to be drawn. All must outlive it.
struct StripDrawing {
    const Project* project = nullptr;
    const Resolved* resolved = nullptr;
    const MarkFacts* facts = nullptr;
    const UnrolledPiece* outside = nullptr;  // seen from outside, datum end above
    const StripTile* tile = nullptr;
    const StripTile* next = nullptr;  // of the same walls
    PrinterScale printer;
};

constexpr double strip_head = 19.0;  // mm of paper above a tile, for words
constexpr double strip_foot = 6.0;   // and below

// mm of paper, head and foot with it.
PackedSize size_of(const StripDrawing& strip);

// `at`: the upper left corner of its paper.
void draw_strip(engine::Page& page, engine::PagePoint at, const StripDrawing& strip);

}  // namespace model

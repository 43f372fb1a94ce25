// Pieces of paper that together mark all holes of a piece: as long and wide as a sheet allows, with
// blank lengths left out.
#pragma once

#include "model/book/mark_facts.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace model {

// How an end of a tile is found on the piece.
enum class TileEnd {
    piece,  // it is the end of the piece
    blank,  // nothing is drilled beyond it, or the next tile is laid off by a tape
    joint   // it overlaps the next tile, which has holes: `at` is where both have the same line
};

struct TileEdge {
    TileEnd kind = TileEnd::piece;
    engine::Length at;  // from the datum end; on a mark of the tape but where the piece ends
};

struct StripTile {
    std::size_t mark = 0;        // in the list of facts
    std::size_t first_wall = 0;  // of those seen from outside, from the left
    std::size_t wall_count = 1;
    TileEdge start;
    TileEdge end;
    double from = 0.0;  // mm along the piece: where the paper begins and ends
    double to = 0.0;
    int part = 1;  // of how many of this mark
    int parts = 1;
};

// What a tile may be, mm of the piece.
struct TileRoom {
    double width = 0.0;
    double length = 0.0;
    engine::Length step;  // distances at which tiles begin are whole numbers of it
};

// mm: what a paper must have room for. 0 where there are no holes.
double widest_drilled_wall(const UnrolledPiece& flat);

// `flat`: seen from outside, its datum end above. No tiles where it has no holes. Those of a room
// that is too short to go on from joint to joint are longer than it.
std::vector<StripTile> strip_tiles(const UnrolledPiece& flat,
                                   std::size_t mark,
                                   const TileRoom& room);

}  // namespace model

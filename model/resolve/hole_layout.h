// Patterns of fasteners in a rectangle: how many fit, and where on the tape's marks they go.
#pragma once

#include "model/resolve/resolved.h"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace model {

// A rectangle in a lap's own coordinates: [0] is the distance from the heel side of the lower wall
// (along the upper piece's run), [1] that from the heel side of the upper wall. May be as thin as a
// line; lo > hi means empty.
struct Region {
    std::array<Nm, 2> lo{};
    std::array<Nm, 2> hi{};
};

// The marks that centres must lie on: phase + k * step in each direction.
struct Marks {
    Nm step = 1;
    std::array<Nm, 2> phase{};
};

enum class Pattern { none, row, two_rows, diagonal, points };

// A pattern that fits, as counts of marks. For a row, `along` is the direction in which it runs.
struct Layout {
    Pattern pattern = Pattern::none;
    std::size_t along = 0;
    int count = 0;
    std::array<Nm, 2> least{};  // first and last usable mark in each direction
    std::array<Nm, 2> most{};
    Nm apart = 1;    // least distance of two centres, in marks
    Nm margin = -1;  // spare marks beyond all the rules, at the tightest place
    Marks marks;
    std::vector<std::array<Nm, 2>> points;  // where the centres are, of the pattern of that name
};

// The best pattern of `wanted` centres, or of as many as fit; a row before two rows before a
// diagonal pair, and of the two ways the one with the greater margin.
Layout best_layout(const Region& region, const Marks& marks, int wanted, Nm pitch);

// `region` without the obstacles, as rectangles of which none can grow; the best layout in any.
Layout best_layout_around(const Region& region,
                          std::span<const Region> obstacles,
                          const Marks& marks,
                          int wanted,
                          Nm pitch);

// `count` marks from least to most, at least `apart` from one another, spread so that the least
// margin is greatest.
void spread(Nm least, Nm most, Nm apart, std::span<Nm> marks);

}  // namespace model

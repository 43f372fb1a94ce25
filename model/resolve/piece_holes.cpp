#include "model/resolve/piece_holes.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace model {

Hole hole_in(const Piece& piece, Index number, std::uint8_t wall, const Point& at) {
    const std::size_t run = index_of(piece.run);
    const std::size_t normal = piece.plates[wall].normal_axis;
    const std::size_t across = 3 - run - normal;
    const Nm gauge = at[across] - piece.datum[across];
    return {.piece = number,
            .wall = wall,
            .from_datum = (at[run] - piece.datum[run]) * piece.run_sense,
            .gauge = gauge < 0 ? -gauge : gauge};
}

Hole hole_in(
    const Piece& piece, const Lean& lean, Index number, std::uint8_t wall, const Point& at) {
    const bool faces_a = piece.plates[wall].normal_axis == index_of(piece.a_axis);
    const auto& across = faces_a ? lean.b : lean.a;
    double along_run = 0.0;
    double from_heel = 0.0;
    for (std::size_t i = 0; i < 3; ++i) {
        // What lies along the wall's normal has no part in either.
        const auto away = static_cast<double>(at[i] - piece.datum[i]);
        along_run += away * lean.run[i];
        from_heel += away * across[i];
    }
    return {.piece = number,
            .wall = wall,
            .from_datum = std::llround(along_run),
            .gauge = std::llround(from_heel)};
}

void sort_holes(Resolved& out) {
    for (auto& piece : out.pieces) piece.hole_count = 0;
    for (const auto& hole : out.holes) ++out.pieces[hole.piece].hole_count;
    Index first = 0;
    for (auto& piece : out.pieces) {
        piece.first_hole = first;
        first += piece.hole_count;
        piece.hole_count = 0;
    }
    std::vector<Hole> sorted(out.holes.size());
    for (const auto& hole : out.holes) {
        Piece& piece = out.pieces[hole.piece];
        sorted[piece.first_hole + piece.hole_count++] = hole;
    }
    for (const auto& piece : out.pieces) {
        const auto begin = sorted.begin() + piece.first_hole;
        std::sort(begin, begin + piece.hole_count, [](const Hole& a, const Hole& b) {
            return std::tie(a.wall, a.gauge, a.from_datum) <
                   std::tie(b.wall, b.gauge, b.from_datum);
        });
    }
    out.holes = std::move(sorted);
}

}  // namespace model

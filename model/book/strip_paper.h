// Where edges, folds and holes of a piece lie on a paper of its drill strip: mm of paper from its
// upper left corner, corrected for the printer.
#pragma once

#include "engine/drawing/page_items.h"
#include "model/book/drill_strips.h"
#include "model/book/strip_tiles.h"

#include <cstddef>
#include <vector>

namespace model {

struct StripHole {
    std::size_t hole = 0;  // in UnrolledPiece::holes
    std::size_t leg = 0;   // of the paper, from the left
    engine::PagePoint at;
    double radius = 0.0;
};

class StripPaper {
public:
    static constexpr double cross_reach = 4.0;  // mm of the piece, from a hole's middle

    // Both must outlive it. `outside`: seen from outside, datum end above.
    StripPaper(const UnrolledPiece& outside, const StripTile& tile, const PrinterScale& printer)
        : flat_{outside}, tile_{tile}, printer_{printer} {}

    double x(double across) const { return (across - wall(0).left()) / printer_.across; }
    double y(double along) const { return (along - tile_.from) / printer_.down; }
    double width() const { return x(wall(tile_.wall_count - 1).right()); }
    double height() const { return y(tile_.to); }
    double reach_across() const { return cross_reach / printer_.across; }
    double reach_down() const { return cross_reach / printer_.down; }

    std::size_t leg_count() const { return tile_.wall_count; }
    const UnrolledWall& wall(std::size_t leg) const { return flat_.walls[tile_.first_wall + leg]; }
    // Between its edges or folds, as long as the paper.
    engine::PageBox leg(std::size_t i) const;
    std::vector<StripHole> holes() const;

    // A place of the paper on the piece.
    double across_at(double paper_x) const { return paper_x * printer_.across + wall(0).left(); }
    double along_at(double paper_y) const { return paper_y * printer_.down + tile_.from; }

private:
    const UnrolledPiece& flat_;
    const StripTile& tile_;
    PrinterScale printer_;
};

}  // namespace model

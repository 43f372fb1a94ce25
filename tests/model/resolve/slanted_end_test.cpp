#include "model/resolve/slanted_end.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <utility>

using engine::Box;
using model::Piece;
using model::within_slanted_ends;

namespace {

// Flat, 100 long along x from 0, 20 wide along y, 2 thick along z; in units of one.
Piece flat() {
    Piece piece;
    piece.length = 100;
    piece.run = model::Axis::x;
    piece.a_axis = model::Axis::y;
    piece.extents = {{0, 0, 0}, {100, 20, 2}};
    piece.plates[0].box = piece.extents;
    piece.plates[0].normal_axis = 2;
    piece.plate_count = 1;
    return piece;
}

Box within(const Piece& piece, const Box& rect) {
    return within_slanted_ends(piece, piece.plates[0], rect);
}

bool same(const Box& a, const Box& b) { return a.lo == b.lo && a.hi == b.hi; }

}  // namespace

TEST_CASE("a square end takes nothing of a lap", "[resolve]") {
    const Box rect{{0, 0, 2}, {20, 20, 2}};
    CHECK(same(within(flat(), rect), rect));
}

// The cut goes from (0, 0) to (20, 20). Of the square behind it a triangle is left; the largest
// rectangle in a right-angled triangle has half of each leg (elementary geometry).
TEST_CASE("of a square beside a mitre half of each side is left", "[resolve]") {
    Piece piece = flat();
    piece.ends[0].slope[0] = 1.0;
    CHECK(same(within(piece, {{0, 0, 2}, {20, 20, 2}}), {{10, 0, 2}, {20, 10, 2}}));
}

// Up to y = 5 the rectangle does not reach the cut at all.
TEST_CASE("no more is taken off than brings the lap clear of the cut", "[resolve]") {
    Piece piece = flat();
    piece.ends[0].slope[0] = 1.0;
    CHECK(same(within(piece, {{19, 0, 2}, {90, 20, 2}}), {{20, 0, 2}, {90, 20, 2}}));
    CHECK(same(within(piece, {{5, 0, 2}, {7, 20, 2}}), {{5, 0, 2}, {7, 5, 2}}));
}

TEST_CASE("the far end is cut the same way, and slopes either way", "[resolve]") {
    Piece piece = flat();
    piece.ends[1].slope[0] = 1.0;
    CHECK(same(within(piece, {{80, 0, 2}, {100, 20, 2}}), {{80, 0, 2}, {90, 10, 2}}));
    piece.ends[1].slope[0] = -1.0;
    CHECK(same(within(piece, {{80, 0, 2}, {100, 20, 2}}), {{80, 10, 2}, {90, 20, 2}}));
}

TEST_CASE("a lap that lies wholly in what a cut takes has no area left", "[resolve]") {
    Piece piece = flat();
    piece.ends[0].slope[0] = 1.0;
    const Box left = within(piece, {{0, 15, 2}, {10, 20, 2}});
    CHECK((left.lo[0] >= left.hi[0] || left.lo[1] >= left.hi[1]));
}

TEST_CASE("a wall's outline ends along the cuts", "[resolve]") {
    Piece piece = flat();
    piece.ends[0].slope[0] = 1.0;
    piece.ends[1].slope[0] = -1.0;
    // 100 x 20 less two right-angled triangles with legs of 20.
    CHECK(model::area_of(model::wall_polygon(piece, piece.plates[0])) == Approx(2000 - 400));
    piece.run_sense = -1;
    piece.datum[0] = 100;
    CHECK(model::area_of(model::wall_polygon(piece, piece.plates[0])) == Approx(2000 - 400));
}

TEST_CASE("a wall's outline ends along the cuts whichever axis it runs along", "[resolve]") {
    Piece piece = flat();
    piece.ends[0].slope[0] = 1.0;
    const auto along_x = model::wall_polygon(piece, piece.plates[0]);
    std::swap(piece.run, piece.a_axis);
    piece.plates[0].box = piece.extents = {{0, 0, 0}, {20, 100, 2}};
    auto along_y = model::wall_polygon(piece, piece.plates[0]);
    for (auto& corner : along_y) std::swap(corner[0], corner[1]);
    std::ranges::sort(along_y);
    auto sorted = along_x;
    std::ranges::sort(sorted);
    CHECK(along_y == sorted);
}

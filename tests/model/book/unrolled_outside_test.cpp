#include "model/schedule/plate_axes.h"
#include "model/schedule/unrolled_piece.h"

#include "tests/model/book/printed_sample.h"
#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/project/sample_files.h"

#include <catch2/catch.hpp>

using tests::PrintedSample;

namespace {

using Vector = std::array<int, 3>;

Vector cross(const Vector& a, const Vector& b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

int dot(const Vector& a, const Vector& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

// Whether the toe lies to the right of the heel for an eye before a wall's outer face that has the
// datum end above: the eye looks along n, the way up is against u.
bool is_toe_right_from_outside(const model::Piece& piece, std::uint8_t wall) {
    const auto axes = model::plate_axes(piece, piece.plates[wall]);
    const Vector up{-axes.u[0], -axes.u[1], -axes.u[2]};
    return dot(cross(axes.n, up), axes.v) > 0;
}

}  // namespace

TEST_CASE("a piece is unrolled as an eye sees it, from inside and from outside",
          "[model][schedule][unrolled]") {
    int walls = 0;
    for (const auto& name : model_tests::sample_names()) {
        const PrintedSample sample(name);
        const auto& resolved = sample.resolved;
        for (model::Index i = 0; i < resolved.pieces.size(); ++i) {
            const auto& piece = resolved.pieces[i];
            if (piece.lean != model::no_index) continue;
            const auto inside =
                model::with_datum_above(model::unrolled_piece(resolved, shipped_catalogue(), i));
            const auto outside = model::seen_from_outside(inside);
            CAPTURE(name, i);
            CHECK_FALSE(inside.datum_is_below);
            CHECK_FALSE(outside.datum_is_below);
            for (const auto& wall : outside.walls) {
                CHECK((wall.toe > wall.heel) == is_toe_right_from_outside(piece, wall.wall));
                ++walls;
            }
            for (const auto& wall : inside.walls)
                CHECK((wall.toe < wall.heel) == is_toe_right_from_outside(piece, wall.wall));
        }
    }
    CHECK(walls > 200);
}

TEST_CASE("turned or mirrored, every hole keeps its distance, its wall and its gauge",
          "[model][schedule][unrolled]") {
    for (const auto& name : model_tests::sample_names()) {
        const PrintedSample sample(name);
        const auto& resolved = sample.resolved;
        for (model::Index i = 0; i < resolved.pieces.size(); ++i) {
            const auto outside = model::seen_from_outside(
                model::with_datum_above(model::unrolled_piece(resolved, shipped_catalogue(), i)));
            CAPTURE(name, i);
            CHECK(outside.holes.size() == resolved.pieces[i].hole_count);
            for (const auto& hole : outside.holes) {
                const auto& it = resolved.holes[hole.hole];
                const auto& wall = outside.walls[hole.wall];
                CHECK(wall.wall == it.wall);
                CHECK(std::abs(hole.across - wall.heel) ==
                      Approx(engine::Length::from_nm(it.gauge).mm()).margin(1e-9));
                CHECK(hole.down ==
                      Approx(engine::Length::from_nm(it.from_datum).mm()).margin(1e-9));
                CHECK(hole.across > wall.left());
                CHECK(hole.across < wall.right());
            }
            for (std::size_t w = 1; w < outside.walls.size(); ++w)
                CHECK(outside.walls[w].left() == Approx(outside.walls[w - 1].right()));
        }
    }
}

#include "model/schedule/unrolled_piece.h"

#include "model/project/edit.h"

#include "tests/model/resolve/resolve_support.h"

#include <catch2/catch.hpp>

#include <cmath>

using model::unrolled_piece;

namespace {

model::Resolved resolved_box() {
    model::Project project{.name = "a box"};
    project.stock.push_back(tests::stock_of("main", "angle 1 x 1 x 1/8", "6063-T52"));
    const auto started = model::apply(project, model::StartBoxFrame{.frame = "box",
                                                                    .stock = "main",
                                                                    .width = "36 in",
                                                                    .depth = "18 in",
                                                                    .height = "30 in"});
    REQUIRE(started.has_value());
    return tests::resolved(*started);
}

}  // namespace

TEST_CASE("an angle opens out into its two legs with the heel between them",
          "[model][schedule][unrolled]") {
    const auto resolved = resolved_box();
    const auto flat = unrolled_piece(resolved, tests::shipped_catalogue(), 0);
    REQUIRE(flat.walls.size() == 2);
    CHECK(flat.walls[0].heel == Approx(flat.walls[1].heel));
    CHECK(flat.walls[0].left() == Approx(0.0));
    CHECK(flat.walls[1].right() == Approx(flat.width));
    const auto& section = tests::shipped_catalogue().sections[resolved.pieces[0].section];
    CHECK(flat.width == Approx(section.a.mm() + section.b.mm()));
}

TEST_CASE("every hole lies on its wall, as far from the heel as its gauge says",
          "[model][schedule][unrolled]") {
    const auto resolved = resolved_box();
    for (model::Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto flat = unrolled_piece(resolved, tests::shipped_catalogue(), i);
        CHECK(flat.holes.size() == resolved.pieces[i].hole_count);
        for (const auto& hole : flat.holes) {
            const auto& wall = flat.walls[hole.wall];
            const double gauge = engine::Length::from_nm(resolved.holes[hole.hole].gauge).mm();
            CHECK(std::abs(hole.across - wall.heel) == Approx(gauge));
            CHECK(hole.across > wall.left());
            CHECK(hole.across < wall.right());
            CHECK(hole.down > 0.0);
            CHECK(hole.down < flat.length);
        }
    }
}

TEST_CASE("the opposite hand has its legs on the same sides and its datum end below",
          "[model][schedule][unrolled]") {
    const auto resolved = resolved_box();
    auto mirrored = resolved;
    mirrored.pieces[0].run_sense *= -1;
    const auto drawn = unrolled_piece(resolved, tests::shipped_catalogue(), 0);
    const auto other = unrolled_piece(mirrored, tests::shipped_catalogue(), 0);
    CHECK(drawn.datum_is_below != other.datum_is_below);
    CHECK(drawn.walls[0].name == other.walls[0].name);
    CHECK(drawn.walls[1].name == other.walls[1].name);
    REQUIRE(drawn.holes.size() == other.holes.size());
    REQUIRE_FALSE(drawn.holes.empty());
    for (std::size_t i = 0; i < drawn.holes.size(); ++i) {
        CHECK(drawn.holes[i].across == Approx(other.holes[i].across));
        CHECK(drawn.holes[i].down == Approx(other.length - other.holes[i].down));
    }
}

TEST_CASE("a leg lies on the side that it has to an eye within the angle",
          "[model][schedule][unrolled]") {
    // Run up, a to the right (x), b away from the eye (y): right-handed. Seen from within with the
    // datum end above, a runs to the right.
    auto resolved = resolved_box();
    auto& piece = resolved.pieces[0];
    piece.run = model::Axis::z;
    piece.run_sense = 1;
    piece.a_axis = model::Axis::x;
    piece.a_sense = 1;
    piece.b_sense = 1;
    const auto flat = unrolled_piece(resolved, tests::shipped_catalogue(), 0);
    CHECK(flat.walls[0].name == "leg b");
    CHECK(flat.walls[1].name == "leg a");
}

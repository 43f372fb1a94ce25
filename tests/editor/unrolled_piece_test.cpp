#include "editor/places/unrolled_piece.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using editor::unrolled_piece;

namespace {

// A desk with a box of that section.
struct Box {
    editor::Desk desk{tests::test_catalogue()};

    Box() { tests::start_box(desk); }

    const editor::Derived& now() { return editor::derived(desk); }
};

}  // namespace

TEST_CASE("an angle opens out into its two legs with the heel between them", "[editor][unrolled]") {
    Box box;
    const auto flat = unrolled_piece(box.now(), *box.desk.catalogue, 0);
    REQUIRE(flat.walls.size() == 2);
    CHECK(flat.walls[0].heel == Approx(flat.walls[1].heel));
    CHECK(flat.walls[0].left() == Approx(0.0));
    CHECK(flat.walls[1].right() == Approx(flat.width));
    const auto& section = box.desk.catalogue->sections[box.now().resolved.pieces[0].section];
    CHECK(flat.width == Approx(section.a.mm() + section.b.mm()));
}

TEST_CASE("every hole lies on its wall, as far from the heel as its gauge says",
          "[editor][unrolled]") {
    Box box;
    const auto& resolved = box.now().resolved;
    for (model::Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto flat = unrolled_piece(box.now(), *box.desk.catalogue, i);
        CHECK(flat.holes.size() == resolved.pieces[i].hole_count);
        for (const auto& hole : flat.holes) {
            const auto& wall = flat.walls[hole.wall];
            const double gauge = engine::Length::from_nm(resolved.holes[hole.hole].gauge).mm();
            CHECK(std::abs(hole.across - wall.heel) == Approx(gauge));
            CHECK(hole.across > wall.left());
            CHECK(hole.across < wall.right());
            CHECK(hole.from_datum < flat.length);
        }
    }
}

TEST_CASE("the opposite hand is the mirror image", "[editor][unrolled]") {
    Box box;
    auto mirrored = box.now();
    mirrored.resolved.pieces[0].run_sense *= -1;
    const auto drawn = unrolled_piece(box.now(), *box.desk.catalogue, 0);
    const auto other = unrolled_piece(mirrored, *box.desk.catalogue, 0);
    CHECK(drawn.walls[0].name == other.walls[1].name);
    CHECK(drawn.walls[1].name == other.walls[0].name);
    REQUIRE(drawn.holes.size() == other.holes.size());
    REQUIRE_FALSE(drawn.holes.empty());
    for (std::size_t i = 0; i < drawn.holes.size(); ++i) {
        CHECK(drawn.holes[i].across == Approx(other.width - other.holes[i].across));
        CHECK(drawn.holes[i].from_datum == Approx(other.holes[i].from_datum));
    }
}

TEST_CASE("a leg lies on the side that it has to an eye within the angle", "[editor][unrolled]") {
    // Run up, a to the right (x), b away from the eye (y): right-handed. Seen from within with the
    // datum end above, a runs to the right.
    Box box;
    auto now = box.now();
    auto& piece = now.resolved.pieces[0];
    piece.run = model::Axis::z;
    piece.run_sense = 1;
    piece.a_axis = model::Axis::x;
    piece.a_sense = 1;
    piece.b_sense = 1;
    const auto flat = unrolled_piece(now, *box.desk.catalogue, 0);
    CHECK(flat.walls[0].name == "leg b");
    CHECK(flat.walls[1].name == "leg a");
}

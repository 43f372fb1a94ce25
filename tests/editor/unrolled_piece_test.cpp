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
    const auto& resolved = box.now().resolved;
    int compared = 0;
    for (model::Index i = 0; i < resolved.pieces.size(); ++i) {
        for (model::Index j = 0; j < resolved.pieces.size(); ++j) {
            const auto& a = resolved.pieces[i];
            const auto& b = resolved.pieces[j];
            if (a.mark != b.mark || a.hand != model::Hand::as_drawn ||
                b.hand != model::Hand::opposite) {
                continue;
            }
            const auto drawn = unrolled_piece(box.now(), *box.desk.catalogue, i);
            const auto other = unrolled_piece(box.now(), *box.desk.catalogue, j);
            CHECK(drawn.walls[0].name == other.walls[1].name);
            ++compared;
        }
    }
    CHECK(compared > 0);
}

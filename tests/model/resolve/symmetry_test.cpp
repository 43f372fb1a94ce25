#include "model/resolve/symmetry.h"

#include <catch2/catch.hpp>

#include <set>
#include <tuple>

using model::Hole;
using model::SectionForm;
using model::SymmetricShape;
using model::Symmetry;

namespace {

auto reading(const Hole& hole) { return std::tuple(hole.wall, hole.gauge, hole.from_datum); }

constexpr SymmetricShape equal_angle{SectionForm::angle, 100, 100, 1000};
constexpr SymmetricShape unequal_angle{SectionForm::angle, 100, 60, 1000};
constexpr SymmetricShape flat{SectionForm::flat, 100, 10, 1000};
constexpr SymmetricShape channel{SectionForm::channel, 100, 60, 1000};
constexpr SymmetricShape oblong_tube{SectionForm::tube, 100, 60, 1000};
constexpr SymmetricShape square_tube{SectionForm::tube, 100, 100, 1000};

}  // namespace

TEST_CASE("the first symmetry of every shape leaves a hole as it is", "[model][symmetry]") {
    for (const auto& shape :
         {equal_angle, unequal_angle, flat, channel, oblong_tube, square_tube}) {
        const Hole hole{.from_datum = 300, .gauge = 20};
        CHECK(reading(model::hole_after(shape, model::symmetries(shape)[0], hole)) ==
              reading(hole));
    }
}

TEST_CASE("each symmetry reads a hole off the axes differently", "[model][symmetry]") {
    for (const auto& shape :
         {equal_angle, unequal_angle, flat, channel, oblong_tube, square_tube}) {
        std::set<std::tuple<std::uint8_t, model::Nm, model::Nm>> seen;
        const Hole hole{.wall = 0, .from_datum = 300, .gauge = 20};
        for (const auto& symmetry : model::symmetries(shape)) {
            seen.insert(reading(model::hole_after(shape, symmetry, hole)));
        }
        CHECK(seen.size() == model::symmetries(shape).size());
    }
}

TEST_CASE("an angle turned end for end shows its other leg", "[model][symmetry]") {
    const Hole hole{.wall = 0, .from_datum = 300, .gauge = 20};
    const Symmetry turn = model::symmetries(equal_angle)[1];
    REQUIRE_FALSE(model::is_mirror(turn));
    CHECK(reading(model::hole_after(equal_angle, turn, hole)) ==
          reading(Hole{.wall = 1, .from_datum = 700, .gauge = 20}));
}

TEST_CASE("an unequal angle read from its other end is a mirror image", "[model][symmetry]") {
    CHECK(model::symmetries(unequal_angle).size() == 2);
    CHECK(model::is_mirror(model::symmetries(unequal_angle)[1]));
}

TEST_CASE("a flat has no hand", "[model][symmetry]") {
    for (const auto& symmetry : model::symmetries(flat)) CHECK_FALSE(model::is_mirror(symmetry));
}

TEST_CASE("turns come before mirror images and are half of all", "[model][symmetry]") {
    for (const auto& shape : {equal_angle, unequal_angle, channel, oblong_tube, square_tube}) {
        const auto group = model::symmetries(shape);
        for (std::size_t i = 0; i < group.size(); ++i) {
            CHECK(model::is_mirror(group[i]) == (i >= group.size() / 2));
        }
    }
}

TEST_CASE("reading a piece anew leaves its metal where it is", "[model][symmetry]") {
    model::Piece piece;
    piece.run = model::Axis::z;
    piece.a_axis = model::Axis::x;
    piece.length = 1000;
    piece.plate_count = 2;
    piece.plates[0] = {.box = {{0, 0, 0}, {100, 10, 1000}}, .wall = 0, .normal_axis = 1};
    piece.plates[1] = {.box = {{0, 0, 0}, {10, 100, 1000}}, .wall = 1, .normal_axis = 0};
    const model::Box leg_a = piece.plates[0].box;

    model::read_after(equal_angle, Symmetry{.reverse = true, .swap = true}, piece, nullptr);

    CHECK(piece.run_sense == -1);
    CHECK(piece.datum == model::Point{0, 0, 1000});
    CHECK(piece.a_axis == model::Axis::y);
    CHECK(piece.plates[1].box == leg_a);
    CHECK(piece.plates[1].wall == 1);
}

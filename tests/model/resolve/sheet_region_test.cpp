#include "model/resolve/sheet_region.h"

#include <catch2/catch.hpp>

namespace {

using model::Region;
using model::sheet_without;

const Region whole{{0, 0}, {100, 60}};

}  // namespace

TEST_CASE("sheet with nothing in its way is the rectangle", "[model][resolve][panels]") {
    const auto shape = sheet_without(whole, {});
    CHECK(shape.outline.corners == model::Corners{{0, 0}, {100, 0}, {100, 60}, {0, 60}});
    CHECK(shape.gone.empty());
    CHECK_FALSE(shape.fell_apart);
}

TEST_CASE("a corner in the way is notched out", "[model][resolve][panels]") {
    const std::array taken{Region{{-5, -5}, {10, 20}}};
    const auto shape = sheet_without(whole, taken);
    CHECK(shape.outline.corners ==
          model::Corners{{0, 20}, {10, 20}, {10, 0}, {100, 0}, {100, 60}, {0, 60}});
    CHECK(shape.bounds.lo == std::array<engine::Nm, 2>{0, 0});
}

TEST_CASE("what is taken from the middle becomes a clockwise cut-out", "[model][resolve][panels]") {
    const std::array taken{Region{{20, 20}, {30, 40}}};
    const auto shape = sheet_without(whole, taken);
    REQUIRE(shape.outline.cut_outs.size() == 1);
    CHECK(shape.outline.cut_outs[0].size() == 4);
    CHECK(shape.outline.cut_outs[0] == model::Corners{{20, 20}, {20, 40}, {30, 40}, {30, 20}});
}

TEST_CASE("a strip over a whole edge moves the edge", "[model][resolve][panels]") {
    const std::array taken{Region{{-5, -5}, {105, 7}}};
    const auto shape = sheet_without(whole, taken);
    CHECK(shape.outline.corners.size() == 4);
    CHECK(shape.bounds.lo[1] == 7);
    CHECK(shape.gone.empty());
}

TEST_CASE("of sheet that falls apart the largest part is kept", "[model][resolve][panels]") {
    const std::array taken{Region{{30, -5}, {40, 65}}};
    const auto shape = sheet_without(whole, taken);
    CHECK(shape.fell_apart);
    CHECK(shape.bounds.lo[0] == 40);
}

TEST_CASE("notches that touch at a corner are parted", "[model][resolve][panels]") {
    const std::array taken{Region{{20, 20}, {30, 30}}, Region{{30, 30}, {40, 40}}};
    const auto shape = sheet_without(whole, taken);
    for (const auto& loop : shape.outline.cut_outs) {
        for (std::size_t i = 0; i < loop.size(); ++i) {
            for (std::size_t k = i + 1; k < loop.size(); ++k) CHECK(loop[i] != loop[k]);
        }
    }
    CHECK(shape.outline.cut_outs.size() == 1);
}

TEST_CASE("nothing is left of sheet that is all taken", "[model][resolve][panels]") {
    const std::array taken{Region{{-5, -5}, {105, 65}}};
    CHECK(sheet_without(whole, taken).outline.corners.empty());
}

TEST_CASE("an opening is narrowed by the side that costs least", "[model][resolve][panels]") {
    const std::array taken{Region{{0, 0}, {10, 60}}, Region{{0, 0}, {100, 5}}};
    const auto opening = model::opening_between(whole, taken);
    CHECK(opening.lo == std::array<engine::Nm, 2>{10, 5});
    CHECK(opening.hi == std::array<engine::Nm, 2>{100, 60});
}

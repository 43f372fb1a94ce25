#include "model/book/strip_tiles.h"

#include <catch2/catch.hpp>

using engine::Length;
using model::strip_tiles;
using model::StripTile;
using model::TileEnd;

namespace {

constexpr auto step = Length::from_nm(5 * Length::nm_per_mm);
constexpr model::TileRoom sheet{.width = 180.0, .length = 220.0, .step = step};

// An angle of 25 mm legs with holes in its left leg.
model::UnrolledPiece angle_with(double length, const std::vector<double>& holes) {
    model::UnrolledPiece flat{.width = 50.0, .length = length};
    flat.walls = {{"leg a", 0, 25.0, 0.0}, {"leg b", 1, 25.0, 50.0}};
    for (std::size_t i = 0; i < holes.size(); ++i)
        flat.holes.push_back({static_cast<model::Index>(i), 0, 12.0, holes[i], 3.0});
    return flat;
}

bool is_on(const StripTile& tile, double hole) { return hole > tile.from && hole < tile.to; }

}  // namespace

TEST_CASE("a short piece is one paper from end to end", "[model][book][strips]") {
    const auto tiles = strip_tiles(angle_with(200.0, {10, 100, 190}), 3, sheet);
    REQUIRE(tiles.size() == 1);
    CHECK(tiles[0].mark == 3);
    CHECK(tiles[0].from == 0.0);
    CHECK(tiles[0].to == 200.0);
    CHECK(tiles[0].start.kind == TileEnd::piece);
    CHECK(tiles[0].end.kind == TileEnd::piece);
    CHECK(tiles[0].wall_count == 2);
}

TEST_CASE("a piece without holes has no paper", "[model][book][strips]") {
    CHECK(strip_tiles(angle_with(200.0, {}), 0, sheet).empty());
}

TEST_CASE("blank lengths are left out, and the next paper begins on a mark of the tape",
          "[model][book][strips]") {
    const auto tiles = strip_tiles(angle_with(1000.0, {10, 20, 503.3, 986}), 0, sheet);
    REQUIRE(tiles.size() == 3);
    CHECK(tiles[0].to == Approx(32.0));
    CHECK(tiles[0].end.kind == TileEnd::blank);
    CHECK(tiles[1].start.kind == TileEnd::blank);
    CHECK(tiles[1].start.at == Length::from_nm(485 * Length::nm_per_mm));
    CHECK(tiles[1].from == Approx(485.0));
    CHECK(tiles[2].end.kind == TileEnd::piece);
    CHECK(tiles[2].to == Approx(1000.0));
    CHECK(tiles[2].part == 3);
    CHECK(tiles[2].parts == 3);
}

TEST_CASE("a first hole far from the datum end is laid off too", "[model][book][strips]") {
    const auto tiles = strip_tiles(angle_with(1000.0, {612}), 0, sheet);
    REQUIRE(tiles.size() == 1);
    CHECK(tiles[0].start.kind == TileEnd::blank);
    CHECK(tiles[0].from == Approx(590.0));
    CHECK(tiles[0].end.kind == TileEnd::blank);
}

TEST_CASE("papers of a long row of holes overlap and share a line", "[model][book][strips]") {
    std::vector<double> holes;
    for (double at = 15.0; at < 900.0; at += 40.0) holes.push_back(at);
    const auto tiles = strip_tiles(angle_with(900.0, holes), 0, sheet);
    REQUIRE(tiles.size() >= 4);
    for (std::size_t i = 1; i < tiles.size(); ++i) {
        CHECK(tiles[i - 1].end.kind == TileEnd::joint);
        CHECK(tiles[i].start.kind == TileEnd::joint);
        CHECK(tiles[i].start.at == tiles[i - 1].end.at);
        CHECK(tiles[i].start.at.nm() % step.nm() == 0);
        CHECK(tiles[i - 1].to - tiles[i].from == Approx(20.0));
    }
    for (const double hole : holes) {
        CAPTURE(hole);
        CHECK(std::any_of(tiles.begin(), tiles.end(),
                          [&](const StripTile& tile) { return is_on(tile, hole); }));
    }
    for (const auto& tile : tiles) CHECK(tile.to - tile.from <= sheet.length + 1e-9);
}

TEST_CASE("a bar that is wider than the sheet gets papers side by side", "[model][book][strips]") {
    model::UnrolledPiece tube{.width = 240.0, .length = 100.0};
    for (std::uint8_t i = 0; i < 4; ++i) {
        tube.walls.push_back({"side", i, 60.0 * i, 60.0 * (i + 1)});
        tube.holes.push_back({i, i, 60.0 * i + 30.0, 50.0, 3.0});
    }
    const auto tiles = strip_tiles(tube, 0, sheet);
    REQUIRE(tiles.size() == 2);
    CHECK(tiles[0].first_wall == 0);
    CHECK(tiles[0].wall_count == 3);
    CHECK(tiles[1].first_wall == 3);
    CHECK(tiles[1].wall_count == 1);
}

TEST_CASE("papers are joined only where holes lie beyond the line that they share",
          "[model][book][strips]") {
    // The last hole 12 to 10 mm before the sheet's limit, in steps of a quarter of a millimetre.
    for (double before = 13.0; before >= 9.0; before -= 0.25) {
        CAPTURE(before);
        const double last = sheet.length - before;
        const auto tiles = strip_tiles(angle_with(600.0, {10, 80, 150, last}), 0, sheet);
        const StripTile* joined = nullptr;
        for (const auto& tile : tiles) {
            if (joined != nullptr) {
                CHECK(tile.start.kind == TileEnd::joint);
                CHECK(last > tile.start.at.mm());
            }
            joined = tile.end.kind == TileEnd::joint ? &tile : nullptr;
            CHECK(tile.to - tile.from <= sheet.length + 1e-9);
        }
        CHECK(joined == nullptr);
        CHECK(is_on(tiles.back(), last));
    }
}

TEST_CASE("a piece as long as the sheet is one paper, however near its end the last hole lies",
          "[model][book][strips]") {
    const auto tiles =
        strip_tiles(angle_with(sheet.length, {10, 80, 150, sheet.length - 6.0}), 0, sheet);
    REQUIRE(tiles.size() == 1);
    CHECK(tiles[0].end.kind == TileEnd::piece);
    CHECK(tiles[0].to == Approx(sheet.length));
}

TEST_CASE("behind a row that fills the sheet a long blank is left out, not joined",
          "[model][book][strips]") {
    const auto tiles = strip_tiles(
        angle_with(900.0, {10, 80, 150, sheet.length - 11.0, sheet.length + 300.0}), 0, sheet);
    REQUIRE(tiles.size() == 2);
    CHECK(tiles[0].end.kind == TileEnd::blank);
    CHECK(tiles[1].start.kind == TileEnd::blank);
}

TEST_CASE("in a room too short for joints papers still come to an end", "[model][book][strips]") {
    std::vector<double> holes;
    for (double at = 15.0; at < 900.0; at += 12.0) holes.push_back(at);
    for (const double length : {25.0, 20.0, 0.0, -40.0}) {
        CAPTURE(length);
        const auto tiles = strip_tiles(angle_with(900.0, holes), 0,
                                       {.width = 180.0, .length = length, .step = step});
        CHECK(tiles.size() < 60);
        for (const double hole : holes) {
            CHECK(std::any_of(tiles.begin(), tiles.end(),
                              [&](const StripTile& tile) { return is_on(tile, hole); }));
        }
    }
}

TEST_CASE("the widest leg that is drilled tells what paper a piece needs",
          "[model][book][strips]") {
    auto flat = angle_with(100.0, {50});
    flat.walls[1].toe = 300.0;
    CHECK(model::widest_drilled_wall(flat) == 25.0);
    flat.holes.push_back({1, 1, 100.0, 50.0, 3.0});
    CHECK(model::widest_drilled_wall(flat) == 275.0);
    CHECK(model::widest_drilled_wall(angle_with(100.0, {})) == 0.0);
}

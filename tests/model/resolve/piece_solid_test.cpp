#include "model/resolve/piece_solid.h"

#include "engine/geometry/solid_measure.h"
#include "engine/statics/section_properties.h"
#include "model/catalogue/section_shape.h"
#include "model/resolve/piece_mesh.h"

#include "tests/support/hand_made.h"
#include "tests/support/mesh_checks.h"
#include "tests/support/solid_checks.h"

#include <catch2/catch.hpp>

#include <numbers>

namespace {

using model::Index;

const model::Catalogue& shipped_catalogue() {
    static const auto loaded = model::load_catalogue(BARWRIGHT_ASSETS);
    REQUIRE(loaded);
    return *loaded;
}

const tests::HandMade& all_shapes() {
    static const auto made = tests::hand_made(shipped_catalogue());
    return made;
}

const model::Piece& piece_with(const std::string& name) {
    const auto& all = all_shapes();
    for (const auto& piece : all.resolved.pieces)
        if (all.project.frames[0].members[piece.member].name == name) return piece;
    FAIL("there is no " + name);
    return all.resolved.pieces[0];
}

double volume_of(const std::string& name) {
    const auto& all = all_shapes();
    const auto index = static_cast<Index>(&piece_with(name) - all.resolved.pieces.data());
    return model::piece_volume(all.resolved, all.catalogue, index);
}

constexpr double round_hole(double diameter) {
    return std::numbers::pi * diameter * diameter / 4.0;
}

}  // namespace

TEST_CASE("a piece of every shape is one closed solid with all its holes, and so is its mesh",
          "[model][piece_solid]") {
    const auto& all = all_shapes();
    model::PieceSolids solids{all.resolved, all.catalogue};
    model::PieceSolid made;
    for (Index i = 0; i < all.resolved.pieces.size(); ++i) {
        const auto& piece = all.resolved.pieces[i];
        CAPTURE(i, all.project.frames[0].members[piece.member].name);
        REQUIRE(solids.make(made, i));
        CHECK(tests::open_edges(made.solid) == 0);
        CHECK(tests::broken_loops(made.solid) == 0);
        CHECK(tests::worst_gap(made.solid) < 1e-6);
        CHECK(made.solid.hole_count == piece.hole_count);
        const auto mesh = model::piece_mesh(all.resolved, all.catalogue, i);
        CHECK(tests::open_edges(mesh) == 0);
        CHECK(tests::faulty_triangles(mesh) == 0);
        // Chords stand for roundings and holes.
        CHECK(tests::volume(mesh) == Approx(engine::measure_of(made.solid).volume).epsilon(0.005));
    }
}

TEST_CASE("a square bar's volume is its section's area by its length, less its holes",
          "[model][piece_solid]") {
    const double tube = 40.0 * 30.0 - 34.0 * 24.0 - (4.0 - std::numbers::pi) * (25.0 - 4.0);
    CHECK(volume_of("test tube 6") ==
          Approx(tube * 300.0 - 3.0 * (round_hole(4.0) + round_hole(3.0))).epsilon(1e-12));
    const double full_toe = 67.0 * 3.0 - 2.0 * (1.0 - std::numbers::pi / 4.0) * 9.0;
    CHECK(volume_of("test full toe 4") ==
          Approx(full_toe * 300.0 - 3.0 * (round_hole(4.0) + round_hole(3.0))).epsilon(1e-12));
}

TEST_CASE("a mitred end has its long point at the piece's end", "[model][piece_solid]") {
    // Both ends recede along leg a: each takes the mean over the section of a.
    const double area = (25.4 + 25.4 - 3.175) * 3.175;
    const double moment = 25.4 * 3.175 * 12.7 + 22.225 * 3.175 * 3.175 / 2.0;
    const double holes = 2.0 * round_hole(4.0) * 3.175;
    CHECK(volume_of("angle 1 x 1 x 1/8 9") ==
          Approx(area * 400.0 - 2.0 * moment - holes).epsilon(1e-12));
}

TEST_CASE("a coped leg ends short of the root fillet of the other leg", "[model][piece_solid]") {
    const double corner = 1.0 - std::numbers::pi / 4.0;
    const double area = 67.0 * 3.0 + corner * (16.0 - 2.0 * 4.0);
    const double leg_a = (40.0 - 7.0) * 3.0 - corner * 4.0;
    const double leg_b = (30.0 - 7.0) * 3.0 - corner * 4.0;
    CHECK(
        volume_of("test angle 15") ==
        Approx(area * 280.0 - leg_a * 25.4 - leg_b * 12.0 - 3.0 * round_hole(4.0)).epsilon(1e-12));
}

TEST_CASE("an outline that crosses itself makes no solid, and is drawn as its box",
          "[model][piece_solid]") {
    auto all = all_shapes();
    auto& pieces = all.resolved.pieces;
    const auto gusset = static_cast<Index>(
        std::find_if(pieces.begin(), pieces.end(),
                     [](const auto& piece) { return piece.kind == model::PieceKind::gusset; }) -
        pieces.begin());
    auto& corners = all.resolved.outlines[pieces[gusset].plates[0].outline].corners;
    std::swap(corners[1], corners[3]);
    CHECK(model::piece_volume(all.resolved, all.catalogue, gusset) == 0.0);
    const auto mesh = model::piece_mesh(all.resolved, all.catalogue, gusset);
    CHECK(tests::open_edges(mesh) == 0);
    CHECK(tests::volume(mesh) == Approx(80.0 * 80.0 * 3.0).epsilon(1e-5));
}

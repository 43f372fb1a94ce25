#include "model/schedule/weight.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace engine::literals;

namespace {

// An angle 1 x 1 x 1/8 with square corners in 6061-T6 (2700 kg/m3), 48 in long.
struct Bar {
    model::Project project;
    model::Catalogue catalogue;
    model::Resolved resolved;

    Bar() {
        catalogue.sections = {{.id = "angle 1 x 1 x 1/8",
                               .form = model::SectionForm::angle,
                               .a = 1_in,
                               .b = 1_in,
                               .thickness = 8_in_64}};
        catalogue.alloys = {{.id = "6061-T6", .density_kg_m3 = 2700.0}};
        project.stock = {{.name = "angle", .section = "angle 1 x 1 x 1/8", .alloy = "6061-T6"}};
        model::Piece piece{.stock = 0, .section = 0, .length = (48_in).nm()};
        piece.plates[0].box = {{0, 0, 0}, {(1_in).nm(), (8_in_64).nm(), (48_in).nm()}};
        piece.plates[0].normal_axis = 1;
        piece.plate_count = 1;
        resolved.pieces = {piece};
    }

    double weight() const { return model::piece_weights_kg(project, catalogue, resolved).front(); }
};

}  // namespace

TEST_CASE("a bar weighs its section's area times its length times the alloy's density",
          "[schedule][weight]") {
    // By hand: 1 x 1/8 + 7/8 x 1/8 = 0.234375 in2; x 48 in = 11.25 in3 = 184.354 cm3; x 2.7 g/cm3.
    CHECK(Bar{}.weight() == Approx(0.497757).epsilon(1e-5));
    CHECK(model::weight_text(Bar{}.weight(), {}) == "1.10 lb");
    CHECK(model::weight_text(Bar{}.weight(), {.form = engine::TapeForm::millimetre}) == "0.50 kg");
}

TEST_CASE("what is drilled out of a bar is taken off its weight", "[schedule][weight]") {
    Bar bar;
    bar.resolved.holes = {{.piece = 0, .wall = 0, .diameter = (1_in).nm()}};
    bar.resolved.pieces[0].hole_count = 1;
    // By hand: pi/4 x 1 in2 x 1/8 in = 0.0981748 in3 = 1.608793 cm3; x 2.7 g/cm3 = 4.34374 g.
    CHECK(Bar{}.weight() - bar.weight() == Approx(0.00434374).epsilon(1e-4));
}

TEST_CASE("a sloping end takes off what its cut takes off", "[schedule][weight]") {
    Bar bar;
    bar.resolved.pieces[0].ends[1].slope = {1.0, 0.0};  // 45 degrees across leg a
    // By hand: the centroid lies (1/8 x 1/2 + 7/64 x 1/16) / 15/64 = 0.295833 in from the heel.
    CHECK(bar.weight() / Bar{}.weight() == Approx(1.0 - 0.295833 / 48.0).epsilon(1e-6));
}

TEST_CASE("what is notched out of one leg is taken off", "[schedule][weight]") {
    Bar bar;
    bar.resolved.pieces[0].ends[0].wall_back[0] = (1_in).nm();
    // By hand: a leg's free width of 7/8 in x 1/8 in x 1 in = 0.109375 in3 of 11.25 in3.
    CHECK(bar.weight() / Bar{}.weight() == Approx(1.0 - 0.109375 / 11.25).epsilon(1e-9));
}

TEST_CASE("a gusset weighs as the alloy that gussets are cut from", "[schedule][weight]") {
    Bar bar;
    bar.catalogue.alloys.push_back({.id = "heavy", .density_kg_m3 = 8000.0});
    bar.project.shop.gusset_alloy = "heavy";
    auto& piece = bar.resolved.pieces[0];
    piece = {.kind = model::PieceKind::gusset};
    piece.plates[0].box = {{0, 0, 0}, {(4_in).nm(), (4_in).nm(), (8_in_64).nm()}};
    piece.plates[0].normal_axis = 2;
    piece.plate_count = 1;
    // By hand: 2 in3 = 32.774128 cm3; x 8 g/cm3.
    CHECK(bar.weight() == Approx(0.262193).epsilon(1e-5));
}

TEST_CASE("an alloy that is not in the catalogue weighs as aluminium does", "[schedule][weight]") {
    Bar bar;
    bar.project.stock[0].alloy = "none such";
    CHECK(bar.weight() == Approx(Bar{}.weight()));
}

TEST_CASE("weights are told to three figures", "[schedule][weight]") {
    const engine::TapeStyle metric{.form = engine::TapeForm::millimetre};
    CHECK(model::weight_text(0.0, metric) == "0 kg");
    CHECK(model::weight_text(12.34, metric) == "12.3 kg");
    CHECK(model::weight_text(123.4, metric) == "123 kg");
}

#include "model/schedule/tally.h"

#include <catch2/catch.hpp>

using model::Axis;
using model::PieceKind;
using model::Tally;
using namespace engine::literals;

namespace {

const engine::TapeStyle inches;
const std::string minus = "\xE2\x88\x92";

engine::TapeStyle metric() { return {.form = engine::TapeForm::millimetre}; }

// A frame with a post, three x-rails and a y-rail.
model::Project rack() {
    model::Project project;
    project.frames = {{.name = "rack",
                       .members = {{.name = "post", .run = Axis::z},
                                   {.name = "rail low", .run = Axis::x},
                                   {.name = "rail mid", .run = Axis::x},
                                   {.name = "rail high", .run = Axis::x},
                                   {.name = "bearer", .run = Axis::y}}}};
    return project;
}

Tally with_lengths(std::vector<engine::Length> lengths) {
    return {.member_lengths = {std::move(lengths)}};
}

}  // namespace

TEST_CASE("a tally counts pieces by kind, holes, fasteners and what holds screws",
          "[schedule][tally]") {
    model::Catalogue catalogue;
    catalogue.rivets = {{.id = "blind rivet 1/8"}};
    catalogue.screws = {{.id = "machine screw 8-32"}};
    model::Resolved resolved;
    resolved.pieces = {{.member = 0, .length = (10_in).nm()},
                       {.member = 0, .part = 1, .length = (5_in).nm()},
                       {.kind = PieceKind::gusset}};
    resolved.holes.resize(7);
    const auto fastener = [](model::FastenerSpec::Kind kind) {
        return model::Fastener{.spec = {.kind = kind, .index = 0}};
    };
    using enum model::FastenerSpec::Kind;
    resolved.fasteners = {fastener(blind_rivet), fastener(blind_rivet), fastener(screw_through),
                          fastener(screw_in_rivet_nut), fastener(screw_tapped)};
    const auto tally = model::tally_of(rack(), catalogue, resolved, {0.25, 0.5, 0.125});
    CHECK(model::piece_count(tally) == 3);
    CHECK(tally.kinds.at(PieceKind::gusset) == 1);
    CHECK(tally.holes == 7);
    CHECK(model::fastener_count(tally) == 5);
    CHECK(tally.fasteners.at("machine screw 8-32") == 3);
    CHECK(tally.nuts.at("nut") == 1);
    CHECK(tally.nuts.at("rivet nut") == 1);
    CHECK(tally.weight_kg == 0.875);
    CHECK(tally.member_lengths[0][0] == 15_in);
}

TEST_CASE("what two tallies differ in is told as at the bench", "[schedule][tally]") {
    const Tally before{.kinds = {{PieceKind::bar, 12}, {PieceKind::cleat, 2}},
                       .holes = 40,
                       .fasteners = {{"blind rivet 1/8", 20}},
                       .weight_kg = 1.0};
    const Tally after{.kinds = {{PieceKind::bar, 12}, {PieceKind::gusset, 4}},
                      .holes = 41,
                      .fasteners = {{"blind rivet 1/8", 19}, {"machine screw 8-32", 2}},
                      .nuts = {{"rivet nut", 2}},
                      .weight_kg = 1.084};
    CHECK(model::part_change_words(before, after) ==
          minus + "2 cleats, +4 gussets, " + minus +
              "1 rivet 1/8, +2 machine screws 8-32, +2 rivet nuts");
    CHECK(model::change_words(before, after, metric()) ==
          minus + "2 cleats, +4 gussets, +1 hole, " + minus +
              "1 rivet 1/8, +2 machine screws 8-32, +2 rivet nuts, +84 g");
    CHECK(model::change_words(after, after, inches).empty());
}

TEST_CASE("a small difference of weight is told in ounces or grams", "[schedule][tally]") {
    // One avoirdupois ounce is 28.349523125 g.
    CHECK(model::weight_change_words(0.084, inches) == "+3.0 oz");
    CHECK(model::weight_change_words(-0.084, metric()) == minus + "84 g");
    CHECK(model::weight_change_words(0.5443, inches) == "+1.20 lb");
    CHECK(model::weight_change_words(-1.05, metric()) == minus + "1.05 kg");
    CHECK(model::weight_change_words(0.0004, metric()).empty());
    CHECK(model::weight_change_words(0.001, metric()) == "+1 g");
    CHECK(model::weight_change_words(0.001, inches).empty());  // 0.035 oz
}

TEST_CASE("members that change alike are told together, one alone by its name",
          "[schedule][tally]") {
    const auto project = rack();
    const auto before = with_lengths({30_in, 24_in, 24_in, 24_in, 18_in});
    const auto words = [&](std::vector<engine::Length> lengths) {
        return model::length_change_words(project, before, project,
                                          with_lengths(std::move(lengths)));
    };
    CHECK(words({30_in, 24_in, 24_in, 24_in, 18_in}).empty());
    CHECK(words({30_in, 23_in, 23_in, 24_in, 19_in}) ==
          "2 x-rails 1 in shorter, bearer 1 in longer");
    CHECK(words({31_in, 23_in, 22_in, 21_in, 18_in}) ==
          "post 1 in longer, rail low 1 in shorter, rail mid 2 in shorter, 1 other by another "
          "length");
}

TEST_CASE("a member that is new, gone or left out is neither longer nor shorter",
          "[schedule][tally]") {
    const auto before = rack();
    auto after = rack();
    after.frames[0].members.erase(after.frames[0].members.begin());
    after.frames[0].members.push_back({.name = "strut", .run = Axis::x});
    const auto was = with_lengths({30_in, 24_in, 24_in, 24_in, 18_in});
    const auto is = with_lengths({24_in, 24_in, {}, 18_in, 12_in});
    CHECK(model::length_change_words(before, was, after, is).empty());
    after.frames[0].name = "another";
    CHECK(model::length_change_words(before, was, after, is).empty());
}

#include "model/schedule/end_words.h"

#include "model/schedule/saw_seen.h"

#include "tests/support/hand_made.h"

#include <catch2/catch.hpp>

#include <algorithm>

using model::Nm;
using model::Piece;

namespace {

constexpr Nm mm = 1'000'000;

const tests::HandMade& all_shapes() {
    static const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    REQUIRE(catalogue);
    static const auto made = tests::hand_made(*catalogue);
    return made;
}

// The first piece of that section with square ends.
Piece square_piece(const std::string& section) {
    const auto& all = all_shapes();
    const auto found = std::find_if(all.resolved.pieces.begin(), all.resolved.pieces.end(),
                                    [&](const Piece& piece) {
                                        return piece.section != model::no_index &&
                                               all.catalogue.sections[piece.section].id == section;
                                    });
    REQUIRE(found != all.resolved.pieces.end());
    return *found;
}

std::array<std::string, 2> words(const Piece& piece) {
    const auto& all = all_shapes();
    auto project = all.project;
    project.shown = {.form = engine::TapeForm::millimetre};
    return model::end_words(project, all.catalogue, all.resolved, piece);
}

}  // namespace

TEST_CASE("an end without slope or notch is square", "[schedule][cut]") {
    CHECK(words(square_piece("angle 1 x 1 x 1/8")) ==
          std::array<std::string, 2>{"square", "square"});
}

TEST_CASE("a mitre names its angle, the leg it runs across and its long point", "[schedule][cut]") {
    auto piece = square_piece("angle 1 x 1 x 1/8");
    piece.ends[0].slope = {1.0, 0.0};
    piece.ends[1].slope = {0.0, -0.75};
    CHECK(words(piece)[0] == "mitre 45 deg across leg a, long point at the heel");
    CHECK(words(piece)[1] == "mitre 36.9 deg across leg b, long point at the toe of leg b");
}

TEST_CASE("an end that slopes both ways names both angles", "[schedule][cut]") {
    auto piece = square_piece("test channel");
    piece.ends[1].slope = {-1.0, 1.0};
    CHECK(words(piece)[1] ==
          "mitre 45 deg across the web, long point at the far flange; mitre 45 deg across the "
          "flanges, long point at the web");
}

TEST_CASE("a notched leg is named with how far it is cut back", "[schedule][cut]") {
    auto piece = square_piece("angle 1 x 1 x 1/8");
    piece.ends[1].wall_back[0] = 26 * mm;
    CHECK(words(piece) == std::array<std::string, 2>{"square", "square; leg a notched back 26 mm"});
}

TEST_CASE("where a notch lies on no mark its millimetres are told, but not to tell cuts apart",
          "[schedule][cut]") {
    auto piece = square_piece("angle 1 x 1 x 1/8");
    piece.ends[1].wall_back[0] = 26 * mm + 312'400;
    const auto& all = all_shapes();
    auto project = all.project;
    project.shown = {.form = engine::TapeForm::millimetre, .decimals = 0};
    const auto told = [&] {
        return model::told_end_words(project, all.catalogue, all.resolved, piece)[1];
    };
    CHECK(told() == "square; leg a notched back ~26 mm (26.31 mm)");
    CHECK(model::end_words(project, all.catalogue, all.resolved, piece)[1] ==
          "square; leg a notched back ~26 mm");
    CHECK(model::ends_text(project, all.catalogue, all.resolved, piece) ==
          "square; square; leg a notched back ~26.3 mm; right-handed");
    project.shown = {.form = engine::TapeForm::inch_fraction, .denominator = 16};
    CHECK(told() == "square; leg a notched back ~1 1/16 in (26.31 mm)");
    piece.ends[1].wall_back[0] = 26 * mm;
    project.shown = {.form = engine::TapeForm::millimetre, .decimals = 0};
    CHECK(told() == "square; leg a notched back 26 mm");
}

TEST_CASE("an end that two cuts bring to a point says where it lies and how they are set",
          "[schedule][cut]") {
    auto piece = square_piece("test flat");
    auto all = all_shapes();
    all.project.shown.form = engine::TapeForm::millimetre;
    // From a point 10 mm from the heel edge back by 10 mm to it, and by 30 mm over the other 30 mm.
    all.resolved.outlines.push_back(
        {.corners = {{0, 0}, {290 * mm, 0}, {300 * mm, 10 * mm}, {270 * mm, 40 * mm}, {0, 40 * mm}},
         .cut_outs = {}});
    piece.plates[0].outline = static_cast<model::Index>(all.resolved.outlines.size() - 1);
    const auto both = model::end_words(all.project, all.catalogue, all.resolved, piece);
    CHECK(both[0] == "square");
    CHECK(both[1] ==
          "to a point 10 mm from the heel edge: mitre 45 deg to the heel edge, mitre 45 deg to the "
          "far edge");
    all.resolved.outlines.back().corners[2][1] += 123'456;
    all.project.shown.decimals = 1;
    CHECK_THAT(model::told_end_words(all.project, all.catalogue, all.resolved, piece)[1],
               Catch::StartsWith("to a point ~10.1 mm (10.12 mm) from the heel edge: "));
}

TEST_CASE("the ends of a brace that one cut makes are mitres of its outline", "[schedule][cut]") {
    auto piece = square_piece("test flat");
    auto all = all_shapes();
    all.resolved.outlines.push_back(
        {.corners = {{0, 0}, {300 * mm, 0}, {260 * mm, 40 * mm}, {0, 40 * mm}}, .cut_outs = {}});
    all.resolved.outlines.push_back(
        {.corners = {{0, 0}, {300 * mm, 0}, {280 * mm, 40 * mm}, {20 * mm, 40 * mm}, {0, 20 * mm}},
         .cut_outs = {}});
    const auto words_of = [&](std::size_t outline) {
        piece.plates[0].outline = static_cast<model::Index>(outline);
        return model::end_words(all.project, all.catalogue, all.resolved, piece);
    };
    const auto last = all.resolved.outlines.size() - 1;
    CHECK(words_of(last - 1)[0] == "square");
    CHECK(words_of(last - 1)[1] == "mitre 45 deg across the face, long point at the heel edge");
    CHECK(words_of(last)[0] == "to its outline");
}

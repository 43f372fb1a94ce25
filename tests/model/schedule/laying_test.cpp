#include "model/schedule/laying.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

using model::TableEnd;

TEST_CASE(
    "an angle laid heel to the fence has its datum end at one hand on leg a, at the other on "
    "leg b",
    "[model][schedule][drill]") {
    const auto job = tests::small_job();
    const auto& post = job.resolved.pieces[0];
    // Leg a lies on its outer face with leg b standing at the fence; worked out with a piece of
    // angle in the hand: run up, leg a to the right, leg b to the back.
    CHECK(model::datum_end_on_table(post, 0) == TableEnd::right);
    CHECK(model::datum_end_on_table(post, 1) == TableEnd::left);
}

TEST_CASE("a mirror image has its datum end at the other hand", "[model][schedule][drill]") {
    const auto job = tests::small_job();
    const auto& left = job.resolved.pieces[0];
    const auto& right = job.resolved.pieces[1];
    for (const auto wall : {std::uint8_t{0}, std::uint8_t{1}}) {
        CHECK(model::datum_end_on_table(left, wall) != model::datum_end_on_table(right, wall));
    }
}

TEST_CASE("turning the datum to the other end of the piece turns the hand",
          "[model][schedule][drill]") {
    const auto job = tests::small_job();
    auto piece = job.resolved.pieces[0];
    const auto before = model::datum_end_on_table(piece, 0);
    piece.datum[2] += piece.length;
    piece.run_sense = -1;
    CHECK(model::datum_end_on_table(piece, 0) != before);
}

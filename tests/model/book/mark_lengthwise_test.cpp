#include "model/book/mark_lengthwise.h"

#include <catch2/catch.hpp>

using model::MarkLengthwise;

TEST_CASE("a piece that has room is drawn to scale", "[model][book]") {
    const MarkLengthwise drawn({0, 200, 12, 188}, 2.0, 150.0);
    CHECK(drawn.breaks().empty());
    CHECK(drawn.height() == Approx(100.0));
    for (const double mm : {0.0, 6.0, 12.0, 100.0, 188.0, 200.0})
        CHECK(drawn.at(mm) == Approx(mm / 2));
}

TEST_CASE("the longest blank lengths are broken until the rest has room", "[model][book]") {
    const MarkLengthwise drawn({0, 10, 25, 500, 960, 990, 1000}, 1.0, 160.0);
    REQUIRE(drawn.breaks().size() == 2);
    CHECK(drawn.height() == Approx(160.0));
    CHECK(drawn.at(10) == Approx(10.0));
    CHECK(drawn.at(25) == Approx(25.0));
    CHECK(drawn.at(960) == Approx(160.0 - 40.0));
    CHECK(drawn.at(1000) == Approx(160.0));
    CHECK(drawn.at(500) == Approx((25.0 + 120.0) / 2));
    for (const double at : drawn.breaks()) {
        CHECK(at > 25.0);
        CHECK(at < 120.0);
        CHECK(std::abs(at - drawn.at(500)) > 5.0);
    }
}

TEST_CASE("however many lengths are blank, the piece has the room that there is", "[model][book]") {
    std::vector<double> features;
    for (int i = 0; i <= 40; ++i) features.push_back(100.0 * i);
    const MarkLengthwise drawn(features, 1.0, 180.0);
    CHECK(drawn.breaks().size() == 40);
    CHECK(drawn.height() == Approx(180.0));
    CHECK(drawn.at(200.0) == Approx(9.0));
}

// Upright edges of what bays take up together.
#include "model/resolve/bay_edges.h"

#include <catch2/catch.hpp>

using namespace model;

namespace {

// An L seen from above, 3 high, whose longer arm ends at half its height.
const std::vector<Box> bays{{{0, 0, 0}, {4, 2, 3}}, {{0, 2, 0}, {2, 4, 2}}};

}  // namespace

TEST_CASE("a corner that stands out is framed with the heel out", "[model][corners]") {
    const auto edges = upright_edges(bays, 4, 0);
    REQUIRE(edges.size() == 1);
    CHECK(edges[0].from == 0);
    CHECK(edges[0].to == 3);
    CHECK(edges[0].seat == Seat::heel);
    CHECK(edges[0].legs == std::array{Sense::minus, Sense::plus});
}

TEST_CASE("a re-entrant corner is framed with the root on its line, as far as it goes",
          "[model][corners]") {
    const auto edges = upright_edges(bays, 2, 2);
    REQUIRE(edges.size() == 1);
    CHECK(edges[0].from == 0);
    CHECK(edges[0].to == 2);
    CHECK(edges[0].seat == Seat::root);
    CHECK(edges[0].legs == std::array{Sense::plus, Sense::plus});
}

TEST_CASE("along a flat side there is no edge, and above a lower bay there is",
          "[model][corners]") {
    CHECK(upright_edges(bays, 2, 0).empty());
    CHECK(upright_edges(bays, 1, 1).empty());
    CHECK(upright_edges(bays, 9, 9).empty());
    const auto edges = upright_edges(bays, 0, 2);
    REQUIRE(edges.size() == 1);
    CHECK(edges[0].from == 2);
    CHECK(edges[0].to == 3);
    CHECK(edges[0].legs == std::array{Sense::plus, Sense::minus});
}

TEST_CASE("bays that stand on each other have one edge", "[model][corners]") {
    const std::vector<Box> stacked{{{0, 0, 0}, {1, 1, 1}}, {{0, 0, 1}, {1, 1, 2}}};
    const auto edges = upright_edges(stacked, 0, 0);
    REQUIRE(edges.size() == 1);
    CHECK(edges[0].to == 2);
}

TEST_CASE("where two bays meet at a line only, it is an edge of both", "[model][corners]") {
    const std::vector<Box> crossed{{{0, 0, 0}, {1, 1, 1}}, {{1, 1, 0}, {2, 2, 1}}};
    REQUIRE(upright_edges(crossed, 1, 1).size() == 1);
    CHECK(upright_edges(crossed, 1, 1)[0].seat == Seat::heel);
}

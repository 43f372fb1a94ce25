// The re-entrant edge that lies behind two others at a corner runs on past it.
#include "model/resolve/resolve.h"

#include "tests/support/frame_builder.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace model;
using engine::Nm;
using tests::inches;
using tests::inches_64;

namespace {

const Catalogue& catalogue() {
    static const auto loaded = load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) FAIL(engine::to_text(loaded.error()));
    return *loaded;
}

// Three edges of an inner corner at (20, 10, 12) in, from its left, front and bottom: a post, a
// rail along y and one along x, which ranks last.
struct Corner {
    std::string post_stock = "main";
    std::string last_allowance = "0";
    bool has_rail = true;
};

Project corner_project(const Corner& it) {
    Project project;
    project.stock = {tests::stock_of("main", "angle 1 x 1 x 1/8", "6063-T52"),
                     tests::stock_of("thin", "angle 1 x 1 x 1/16", "6063-T52")};
    tests::FrameBuilder builder("corner");
    const Nm x = inches(20), y = inches(10), z = inches(12);
    const auto edge = [&](const std::string& stock, Axis run, std::array<Nm, 2> on, Nm to,
                          int rank) {
        auto& member = builder.member(stock, run, on, 0, to, {Sense::minus, Sense::minus});
        member.seat = Seat::root;
        member.rank = rank;
    };
    edge(it.post_stock, Axis::z, {x, y}, z, 10);
    if (it.has_rail) edge("main", Axis::y, {x, z}, y, 15);
    edge("main", Axis::x, {y, z}, x, 20);
    builder.frame().members.back().allowance_to = it.last_allowance;
    project.frames.push_back(builder.frame());
    return project;
}

// How far past the corner the edge along x ends.
Nm beyond(const Corner& it) {
    const auto resolved = resolve(corner_project(it), catalogue());
    const auto last = std::ranges::find_if(resolved.pieces,
                                           [](const Piece& piece) { return piece.run == Axis::x; });
    if (last == resolved.pieces.end()) FAIL("the edge along x is not there");
    return last->extents.hi[0] - inches(20);
}

}  // namespace

TEST_CASE("the last of three edges at an inner corner runs on to the heels of the others",
          "[model][resolve][run_on]") {
    CHECK(beyond({}) == inches_64(8));
}

TEST_CASE("an edge runs on no further than the thinner of the others", "[model][resolve][run_on]") {
    CHECK(beyond({.post_stock = "thin"}) == inches_64(4));
}

TEST_CASE("an edge with an allowance ends where that says", "[model][resolve][run_on]") {
    CHECK(beyond({.last_allowance = "1/4 in"}) == -inches_64(16));
}

TEST_CASE("where two edges meet neither runs on", "[model][resolve][run_on]") {
    CHECK(beyond({.has_rail = false}) == 0);
}

TEST_CASE("all laps of an inner corner of 1 in angle take two 1/8 in rivets",
          "[model][resolve][run_on]") {
    auto project = corner_project({});
    project.shop.fastener = "blind rivet 1/8";
    const auto resolved = resolve(project, catalogue());
    REQUIRE(resolved.joints.size() == 3);
    for (const auto& joint : resolved.joints) CHECK(joint.fastener_count == 2);
}

// The check values of the staggered lap: a box 36 x 18 x 30 in with one shelf level of angle, heels
// on the lines, legs inward.
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolve.h"

#include "tests/support/frame_builder.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <map>
#include <string>
#include <vector>

namespace {

using model::Axis;
using tests::inches;
using tests::inches_64;
using tests::Nm;

const model::Catalogue& shipped() {
    static const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    REQUIRE(catalogue);
    return *catalogue;
}

model::Project box_with_shelf(const std::string& section, const std::string& end_gap) {
    tests::BoxShape shape;
    shape.shelves = {inches(12)};
    auto project = tests::box_project(shape, section, "6063-T52");
    project.shop.end_gap = end_gap;
    return project;
}

// The distinct lengths of the pieces that run along an axis.
std::vector<Nm> lengths_along(const model::Resolved& resolved, Axis run) {
    std::vector<Nm> lengths;
    for (const auto& piece : resolved.pieces) {
        if (piece.run == run) lengths.push_back(piece.length);
    }
    std::sort(lengths.begin(), lengths.end());
    lengths.erase(std::unique(lengths.begin(), lengths.end()), lengths.end());
    return lengths;
}

// Which two kinds of member a lap joins: their runs in order, "xz".
std::string runs_of(const model::Resolved& resolved, const model::Joint& joint) {
    constexpr std::string_view names = "xyz";
    std::string runs;
    for (const auto piece : joint.pieces) runs += names[index_of(resolved.pieces[piece].run)];
    std::sort(runs.begin(), runs.end());
    return runs;
}

// The two sizes of a lap, the smaller first.
std::array<Nm, 2> size_of(const model::Joint& joint) {
    std::array<Nm, 2> size{};
    std::size_t k = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        if (i != joint.normal_axis) size[k++] = joint.lap.hi[i] - joint.lap.lo[i];
    }
    return {std::min(size[0], size[1]), std::max(size[0], size[1])};
}

void check_laps(const model::Resolved& resolved,
                const std::map<std::string, std::array<Nm, 2>>& expected) {
    std::map<std::string, int> count;
    for (const auto& joint : resolved.joints) {
        const auto runs = runs_of(resolved, joint);
        CAPTURE(runs);
        ++count[runs];
        REQUIRE(expected.count(runs) == 1);
        CHECK(size_of(joint) == expected.at(runs));
    }
    // Eight corners of the box and four of the shelf.
    CHECK(count == std::map<std::string, int>{{"xy", 12}, {"xz", 12}, {"yz", 12}});
}

// How many laps of each kind hold how many fasteners.
std::map<std::string, std::map<int, int>> fasteners_in_laps(const model::Resolved& resolved) {
    std::map<std::string, std::map<int, int>> laps;
    for (const auto& joint : resolved.joints) {
        ++laps[runs_of(resolved, joint)][static_cast<int>(joint.fastener_count)];
    }
    return laps;
}

std::size_t findings_of(const model::Resolved& resolved, const std::string& code) {
    return static_cast<std::size_t>(
        std::count_if(resolved.findings.begin(), resolved.findings.end(),
                      [&](const auto& finding) { return finding.code == code; }));
}

using Laps = std::map<std::string, std::map<int, int>>;

}  // namespace

TEST_CASE("a box with a shelf has the lengths of the design with an end gap of 1/64 in",
          "[resolve][check values]") {
    const auto resolved = model::resolve(box_with_shelf("angle 1 x 1 x 1/8", "1/64 in"), shipped());
    CHECK(resolved.pieces.size() == 16);
    CHECK(lengths_along(resolved, Axis::z) == std::vector{inches(30)});
    CHECK(lengths_along(resolved, Axis::x) == std::vector{inches(35) + inches_64(46)});
    CHECK(lengths_along(resolved, Axis::y) == std::vector{inches(17) + inches_64(30)});
    check_laps(resolved, {{"xz", {inches_64(55), inches(1)}},
                          {"yz", {inches_64(47), inches(1)}},
                          {"xy", {inches_64(55), inches_64(63)}}});
    CHECK(findings_of(resolved, "interference") == 0);
    CHECK(findings_of(resolved, "loose_end") == 0);
}

TEST_CASE("a box with a shelf has the lengths of the design with an end gap of 1/32 in",
          "[resolve][check values]") {
    const auto resolved = model::resolve(box_with_shelf("angle 1 x 1 x 1/8", "1/32 in"), shipped());
    CHECK(lengths_along(resolved, Axis::z) == std::vector{inches(30)});
    CHECK(lengths_along(resolved, Axis::x) == std::vector{inches(35) + inches_64(44)});
    CHECK(lengths_along(resolved, Axis::y) == std::vector{inches(17) + inches_64(28)});
    check_laps(resolved, {{"xz", {inches_64(54), inches(1)}},
                          {"yz", {inches_64(46), inches(1)}},
                          {"xy", {inches_64(54), inches_64(62)}}});
    CHECK(findings_of(resolved, "interference") == 0);
}

TEST_CASE("posts lie outside, x-rails behind them and y-rails behind both",
          "[resolve][check values]") {
    const auto resolved = model::resolve(box_with_shelf("angle 1 x 1 x 1/8", "1/32 in"), shipped());
    model::Box posts{};
    model::Box x_rails{};
    model::Box y_rails{};
    for (const auto& piece : resolved.pieces) {
        auto& whole = piece.run == Axis::z ? posts : piece.run == Axis::x ? x_rails : y_rails;
        whole = is_empty(whole) ? piece.extents : hull(whole, piece.extents);
    }
    const Nm t = inches_64(8);
    const Nm gap = inches_64(2);
    CHECK(posts == model::Box{{0, 0, 0}, {inches(36), inches(18), inches(30)}});
    CHECK(x_rails ==
          model::Box{{t + gap, t, 0}, {inches(36) - t - gap, inches(18) - t, inches(30)}});
    CHECK(y_rails == model::Box{{t, 2 * t + gap, t},
                                {inches(36) - t, inches(18) - 2 * t - gap, inches(30) - t}});
}

TEST_CASE("angle 1 x 1 x 1/8 takes two 1/8 in rivets in every lap", "[resolve][check values]") {
    auto project = box_with_shelf("angle 1 x 1 x 1/8", "1/32 in");
    SECTION("chosen by the plates' thickness") {}
    SECTION("asked for by name") { project.shop.fastener = "blind rivet 1/8"; }
    const auto resolved = model::resolve(project, shipped());
    CHECK(fasteners_in_laps(resolved) ==
          Laps{{"xy", {{2, 12}}}, {"xz", {{2, 12}}}, {"yz", {{2, 12}}}});
    CHECK(resolved.fasteners.size() == 72);
    CHECK(resolved.holes.size() == 144);
    CHECK(findings_of(resolved, "too_few_fasteners") == 0);
    for (const auto& fastener : resolved.fasteners) {
        CHECK(shipped().rivets[fastener.spec.index].id == "blind rivet 1/8");
        CHECK(fastener.grip == inches_64(16));
    }
}

TEST_CASE("angle 3/4 x 3/4 x 1/8 takes two 3/32 in rivets in 24 laps and one in 12",
          "[resolve][check values]") {
    auto project = box_with_shelf("angle 3/4 x 3/4 x 1/8", "1/32 in");
    project.shop.fastener = "blind rivet 3/32";
    const auto resolved = model::resolve(project, shipped());
    std::map<int, int> laps;
    for (const auto& [runs, counts] : fasteners_in_laps(resolved)) {
        for (const auto& [fits, number] : counts) laps[fits] += number;
    }
    CHECK(laps == std::map<int, int>{{1, 12}, {2, 24}});
    CHECK(findings_of(resolved, "too_few_fasteners") == 12);
}

TEST_CASE("angle 3/4 x 3/4 x 1/8 takes no 1/8 in rivet where a y-rail meets a post",
          "[resolve][check values]") {
    auto project = box_with_shelf("angle 3/4 x 3/4 x 1/8", "1/32 in");
    project.shop.fastener = "blind rivet 1/8";
    const auto resolved = model::resolve(project, shipped());
    auto laps = fasteners_in_laps(resolved);
    CHECK(laps["yz"] == std::map<int, int>{{0, 12}});
    CHECK(findings_of(resolved, "too_few_fasteners") >= 12);
}

TEST_CASE("5/32 in rivets want legs of 1 1/4 in", "[resolve][check values]") {
    auto project = box_with_shelf("angle 1 1/4 x 1 1/4 x 1/8", "1/32 in");
    project.shop.fastener = "blind rivet 5/32";
    CHECK(fasteners_in_laps(model::resolve(project, shipped())) ==
          Laps{{"xy", {{2, 12}}}, {"xz", {{2, 12}}}, {"yz", {{2, 12}}}});
    project.stock[0].section = "angle 1 x 1 x 1/8";
    CHECK(findings_of(model::resolve(project, shipped()), "too_few_fasteners") > 0);
}

TEST_CASE("with an end gap of half a graduation no hole lies on the tape from both ends",
          "[resolve][check values]") {
    const auto half = model::resolve(box_with_shelf("angle 1 x 1 x 1/8", "1/64 in"), shipped());
    const auto whole = model::resolve(box_with_shelf("angle 1 x 1 x 1/8", "1/32 in"), shipped());
    const auto on_tape = [](const model::Resolved& resolved, const model::Hole& hole) {
        const Nm length = resolved.pieces[hole.piece].length;
        return hole.from_datum % inches_64(2) == 0 &&
               (length - hole.from_datum) % inches_64(2) == 0;
    };
    const auto on_tape_in_both = [&](const model::Resolved& resolved) {
        std::map<model::Index, int> count;
        for (const auto& hole : resolved.holes) count[hole.fastener] += on_tape(resolved, hole);
        return std::count_if(count.begin(), count.end(),
                             [](const auto& c) { return c.second == 2; });
    };
    CHECK(on_tape_in_both(half) == 0);
    CHECK(on_tape_in_both(whole) == static_cast<long>(whole.fasteners.size()));
}

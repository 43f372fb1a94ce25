// Rank, set-in, trim and split, seen in the pieces that come out. All bar is 1 x 1 x 1/8 in angle
// with an end gap of 1/32 in unless said otherwise.
#include "tests/model/resolve/resolve_support.h"

using model::Axis;
using model::Seat;
using model::Sense;
using tests::FrameBuilder;
using tests::inches;
using tests::inches_64;

namespace {

constexpr auto plus = Sense::plus;
constexpr auto minus = Sense::minus;

// A post and an x-rail that end at one corner on the front.
model::Project corner() {
    FrameBuilder builder("corner");
    builder.member("main", Axis::z, {0, 0}, 0, inches(20), {plus, plus});
    builder.member("main", Axis::x, {0, inches(20)}, 0, inches(30), {plus, minus});
    return tests::project_of(builder);
}

}  // namespace

TEST_CASE("at a corner the post lies outside and the rail behind it", "[model][rank]") {
    const auto project = corner();
    const auto resolved = tests::resolved(project);
    const auto post = tests::pieces_of(project, resolved, "m1");
    const auto rail = tests::pieces_of(project, resolved, "m2");
    REQUIRE(post.size() == 1);
    REQUIRE(rail.size() == 1);
    CHECK(post[0].length == inches(20));
    CHECK(rail[0].extents.lo[1] == inches_64(8));
    CHECK(rail[0].extents.lo[0] == inches_64(10));  // the post's other leg and the end gap
}

TEST_CASE("a rank that the user gives turns the corner round", "[model][rank]") {
    auto project = corner();
    project.frames[0].members[1].rank = 5;
    const auto resolved = tests::resolved(project);
    CHECK(tests::pieces_of(project, resolved, "m2")[0].length == inches(30));
    // The post stops below the rail's flat leg.
    CHECK(tests::pieces_of(project, resolved, "m1")[0].extents.hi[2] == inches(20) - inches_64(10));
}

TEST_CASE("what ends on another's span lies behind it", "[model][rank]") {
    FrameBuilder builder("tee");
    builder.member("main", Axis::x, {0, inches(20)}, 0, inches(30), {plus, minus});
    builder.member("main", Axis::z, {inches(15), 0}, 0, inches(20), {plus, plus});
    const auto project = tests::project_of(builder);
    const auto resolved = tests::resolved(project);
    CHECK(tests::pieces_of(project, resolved, "m1")[0].extents.lo[1] == 0);
    const auto post = tests::pieces_of(project, resolved, "m2")[0];
    CHECK(post.extents.lo[1] == inches_64(8));
    CHECK(post.extents.hi[2] == inches(20) - inches_64(10));
}

TEST_CASE("a chain of three lies in three layers", "[model][set_in]") {
    FrameBuilder builder("chain");
    builder.member("main", Axis::z, {0, 0}, 0, inches(30), {plus, plus});
    builder.member("main", Axis::x, {0, inches(20)}, 0, inches(30), {plus, minus});
    builder.member("main", Axis::z, {inches(15), 0}, 0, inches(20), {plus, plus});
    const auto project = tests::project_of(builder);
    const auto resolved = tests::resolved(project);
    CHECK(tests::pieces_of(project, resolved, "m1")[0].extents.lo[1] == 0);
    CHECK(tests::pieces_of(project, resolved, "m2")[0].extents.lo[1] == inches_64(8));
    CHECK(tests::pieces_of(project, resolved, "m3")[0].extents.lo[1] == inches_64(16));
}

TEST_CASE("a loop of ranks is told with the names of its members", "[model][rank]") {
    // Each ends on the span of the next.
    FrameBuilder builder("pinwheel");
    builder.member("main", Axis::x, {0, inches(10)}, 0, inches(20), {plus, plus});
    builder.member("main", Axis::y, {inches(20), inches(10)}, inches(-10), inches(20),
                   {plus, plus});
    builder.member("main", Axis::x, {inches(20), inches(10)}, inches(10), inches(30), {plus, plus});
    builder.member("main", Axis::y, {inches(10), inches(10)}, 0, inches(30), {plus, plus});
    auto project = tests::project_of(builder);
    // Turned round so that every one really stops at the next: m1 at m2, m2 at m3, m3 at m4, m4 at
    // m1.
    const auto resolved = tests::resolved(project);
    const auto* finding = tests::first_of(resolved, "rank_loop");
    REQUIRE(finding != nullptr);
    CHECK(finding->concerns.size() == 4);
    CHECK(tests::count_of(resolved, "interference") == 0);
}

TEST_CASE("the lower one of two that cross becomes two pieces", "[model][trim]") {
    FrameBuilder builder("cross");
    builder.member("main", Axis::z, {inches(15), 0}, 0, inches(30), {plus, plus});
    builder.member("main", Axis::x, {0, inches(20)}, 0, inches(30), {plus, minus});
    const auto project = tests::project_of(builder);
    const auto resolved = tests::resolved(project);
    CHECK(tests::pieces_of(project, resolved, "m1").size() == 1);
    const auto rail = tests::pieces_of(project, resolved, "m2");
    REQUIRE(rail.size() == 2);
    // Parted by the post's side leg, 1/8 in thick, with the end gap on both sides.
    CHECK(rail[0].extents.hi[0] == inches(15) - inches_64(2));
    CHECK(rail[1].extents.lo[0] == inches(15) + inches_64(10));
    CHECK(rail[1].part == 1);
}

TEST_CASE("a member whose end is held back is shorter by that", "[model][trim]") {
    auto project = corner();
    project.frames[0].members[0].allowance_to = "1 1/2 in";
    const auto resolved = tests::resolved(project);
    CHECK(tests::pieces_of(project, resolved, "m1")[0].length == inches(20) - inches_64(96));
}

TEST_CASE("with the root on the line the metal lies on the far side of the planes",
          "[model][member_plates]") {
    FrameBuilder builder("step");
    auto& edge =
        builder.member("main", Axis::x, {inches(10), inches(9)}, 0, inches(30), {plus, minus});
    edge.seat = Seat::root;
    const auto project = tests::project_of(builder);
    const auto piece = tests::pieces_of(project, tests::resolved(project), "m1")[0];
    CHECK(piece.extents.lo[1] == inches(10) - inches_64(8));
    CHECK(piece.extents.hi[1] == inches(11) - inches_64(8));
    CHECK(piece.extents.lo[2] == inches(8) + inches_64(8));
    CHECK(piece.extents.hi[2] == inches(9) + inches_64(8));
}

TEST_CASE("turned, an unequal angle shows its other leg on the first plane",
          "[model][member_plates]") {
    FrameBuilder builder("unequal");
    builder.member("main", Axis::z, {0, 0}, 0, inches(20), {plus, plus});
    auto project = tests::project_of(builder);
    project.stock[0].section = tests::section_id(
        tests::shipped_catalogue(), model::SectionForm::angle, inches(2), inches(1), inches_64(8));
    REQUIRE_FALSE(project.stock[0].section.empty());
    const auto straight = tests::pieces_of(project, tests::resolved(project), "m1")[0].extents;
    project.frames[0].members[0].turned = true;
    const auto turned = tests::pieces_of(project, tests::resolved(project), "m1")[0].extents;
    CHECK(straight.hi == model::Point{inches(1), inches(2), inches(20)});
    CHECK(turned.hi == model::Point{inches(2), inches(1), inches(20)});
}

TEST_CASE("thinner bar behind thicker leaves a gap that a shim fills", "[model][lap]") {
    tests::BoxShape shape;
    auto project = tests::box_project(shape, "angle 1 x 1 x 1/8", "6063-T52");
    project.stock.push_back(tests::stock_of("thin", "angle 1 x 1 x 1/16", "6063-T52"));
    // One of the four posts is thin: the rails lie behind the thick ones and miss it by 1/16 in.
    for (auto& member : project.frames[0].members) {
        if (member.run == Axis::z) {
            member.stock = "thin";
            break;
        }
    }
    const auto resolved = tests::resolved(project);
    const auto shims =
        std::count_if(resolved.pieces.begin(), resolved.pieces.end(),
                      [](const model::Piece& p) { return p.kind == model::PieceKind::shim; });
    CHECK(shims == 4);  // two rails at the bottom, two at the top
    for (const auto& joint : resolved.joints) {
        if (joint.shim == model::no_index) continue;
        CHECK(joint.fastener_count > 0);
        const auto& fastener = resolved.fasteners_of(joint)[0];
        CHECK(fastener.stack_count == 3);
        CHECK(fastener.grip == inches_64(4 + 4 + 8));
    }
    CHECK(tests::count_of(resolved, "interference") == 0);
}

TEST_CASE("a frame of one section needs no shim", "[model][lap]") {
    tests::BoxShape shape;
    shape.shelves = {inches(10), inches(20)};
    const auto resolved =
        tests::resolved(tests::box_project(shape, "angle 1 x 1 x 1/8", "6063-T52"));
    for (const auto& piece : resolved.pieces) CHECK(piece.kind == model::PieceKind::bar);
    CHECK(tests::count_of(resolved, "loose_end") == 0);
    CHECK(tests::count_of(resolved, "interference") == 0);
}

TEST_CASE("an end that touches nothing is loose", "[model][lap]") {
    auto project = corner();
    const auto resolved = tests::resolved(project);
    // The post's foot and the rail's far end stand free; the corner itself holds.
    REQUIRE(tests::count_of(resolved, "loose_end") == 2);
}

TEST_CASE("the second of two members on one line is left out and told", "[model][resolve]") {
    FrameBuilder builder("twice");
    builder.member("main", Axis::z, {0, 0}, 0, inches(20), {plus, plus});
    builder.member("main", Axis::z, {0, 0}, inches(5), inches(15), {plus, plus});
    const auto project = tests::project_of(builder);
    const auto resolved = tests::resolved(project);
    CHECK(tests::count_of(resolved, "same_place") == 1);
    CHECK(tests::pieces_of(project, resolved, "m1").size() == 1);
    CHECK(tests::pieces_of(project, resolved, "m2").empty());
}

TEST_CASE("members that enter each other are told with the depth", "[model][interference]") {
    FrameBuilder builder("tight");
    builder.member("main", Axis::z, {0, 0}, 0, inches(20), {plus, plus});
    builder.member("main", Axis::z, {inches_64(2), 0}, inches(5), inches(15), {plus, plus});
    const auto resolved = tests::resolved(tests::project_of(builder));
    const auto* finding = tests::first_of(resolved, "interference");
    REQUIRE(finding != nullptr);
    REQUIRE(finding->numbers.size() == 1);
    CHECK(std::get<engine::Length>(finding->numbers[0].value).nm() == inches_64(8));
}

TEST_CASE("frames that stand in one another are told so", "[model][interference]") {
    auto project = corner();
    project.frames.push_back(project.frames[0]);
    project.frames[1].name = "other";
    CHECK(tests::count_of(tests::resolved(project), "interference") > 0);
    project.frames[1].origin[0] = "5 ft";
    CHECK(tests::count_of(tests::resolved(project), "interference") == 0);
}

TEST_CASE("a tube is one layer: what lies behind it lies behind all of it", "[model][set_in]") {
    FrameBuilder builder("tube");
    builder.member("post", Axis::z, {0, 0}, 0, inches(20), {plus, plus});
    builder.member("main", Axis::x, {0, inches(10)}, inches(-10), inches(20), {plus, minus});
    auto project = tests::project_of(builder);
    project.frames[0].members[0].rank = 1;
    project.stock.push_back(tests::stock_of("post", "tube 1 x 1 x 1/8", "6063-T52"));
    const auto resolved = tests::resolved(project);
    CHECK(tests::pieces_of(project, resolved, "m2")[0].extents.lo[1] == inches(1));
    CHECK(tests::count_of(resolved, "interference") == 0);
}

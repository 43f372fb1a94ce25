// Braces: where they lie, how they end, what holds them, and what is said of those that cannot be.
// All other bar is 1 x 1 x 1/8 in angle.
#include "tests/model/resolve/resolve_support.h"
#include "tests/support/run_project.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <string>
#include <utility>
#include <vector>

using model::Axis;
using model::BraceEnds;
using model::Corners;
using model::Diagonal;
using model::FaceSide;
using model::Index;
using model::Piece;
using model::PieceKind;
using model::Sense;
using tests::inches;
using tests::inches_64;
using tests::Nm;

namespace {

constexpr auto plus = Sense::plus;
constexpr auto minus = Sense::minus;

// A box 40 in wide, 18 in deep and 30 in high, with flat bar 1 1/2 x 1/8 in at hand: a brace across
// its front runs 50 in, 4 across for 3 up.
model::Project braced_box(const std::vector<Diagonal>& diagonals, Nm width = inches(40)) {
    auto project = tests::box_project({.width = width}, "angle 1 x 1 x 1/8", "6063-T52");
    project.stock.push_back(tests::stock_of("flat", "flat 1 1/2 x 1/8", "6063-T52"));
    project.frames[0].diagonals = diagonals;
    return project;
}

std::string plane_at(const model::Project& project, Axis axis, bool last) {
    std::vector<std::string> names;
    for (const auto& plane : project.frames[0].planes) {
        if (plane.axis == axis) names.push_back(plane.name);
    }
    return last ? names.back() : names.front();
}

// From the lower left corner of the front to the upper right one, or falling.
Diagonal across_face(bool rises, bool at_back = false, Nm width = inches(40)) {
    const auto project = braced_box({}, width);
    Diagonal diagonal{.name = rises ? "rising" : "falling", .stock = "flat"};
    diagonal.face = plane_at(project, Axis::y, at_back);
    diagonal.from = {plane_at(project, Axis::x, false), plane_at(project, Axis::z, !rises)};
    diagonal.to = {plane_at(project, Axis::x, true), plane_at(project, Axis::z, rises)};
    diagonal.side = FaceSide::outside;
    return diagonal;
}

std::vector<Index> braces_of(const model::Resolved& resolved) {
    std::vector<Index> braces;
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        if (resolved.pieces[i].kind == PieceKind::brace) braces.push_back(i);
    }
    return braces;
}

const Corners& corners_of(const model::Resolved& resolved, const Piece& brace) {
    return resolved.outlines[brace.plates[0].outline].corners;
}

// Of all that can be read from the project's files.
tests::Complaints complaints_of(const model::Project& project) {
    return tests::skeleton_complaints(tests::written_files(project, tests::shipped_catalogue()),
                                      tests::rules_of(project));
}

bool is_near(Nm a, Nm b) { return std::abs(a - b) <= 1; }

// Two posts with nothing between them, 40 in apart and 40 in high.
model::Project two_posts(const std::vector<Diagonal>& diagonals) {
    tests::FrameBuilder builder("posts");
    builder.member("main", Axis::z, {0, 0}, 0, inches(40), {plus, plus});
    builder.member("main", Axis::z, {inches(40), 0}, 0, inches(40), {minus, plus});
    auto project = tests::project_of(builder);
    project.stock.push_back(tests::stock_of("flat", "flat 1 1/2 x 1/8", "6063-T52"));
    project.frames[0].diagonals = diagonals;
    return project;
}

// 40 in across and 30 in up, between places on the posts where nothing else is.
model::Project braced_posts() {
    tests::FrameBuilder builder("posts");
    builder.member("main", Axis::z, {0, 0}, 0, inches(40), {plus, plus});
    builder.member("main", Axis::z, {inches(40), 0}, 0, inches(40), {minus, plus});
    Diagonal diagonal{.name = "strut", .stock = "flat", .face = builder.plane(Axis::y, 0)};
    diagonal.from = {builder.plane(Axis::x, 0), builder.plane(Axis::z, inches(5))};
    diagonal.to = {builder.plane(Axis::x, inches(40)), builder.plane(Axis::z, inches(35))};
    diagonal.side = FaceSide::outside;
    auto project = two_posts({});
    project.frames[0] = builder.frame();
    project.frames[0].diagonals = {diagonal};
    return project;
}

// The front's left post and bottom rail, which the rising brace covers where they lap.
std::array<std::string, 2> covered_pair(const model::Resolved& resolved,
                                        const model::Project& project) {
    for (const auto& joint : resolved.joints) {
        if (joint.brace == model::no_index || joint.lap.lo[0] > inches(10)) continue;
        const auto& members = project.frames[0].members;
        return {members[resolved.pieces[joint.pieces[0]].member].name,
                members[resolved.pieces[joint.pieces[1]].member].name};
    }
    return {};
}

// The front with a sheet on it where the rising brace is, and an opening in the sheet.
std::string panel_on_brace_says(const model::CutOut& opening) {
    auto project = braced_box({across_face(true)});
    auto& frame = project.frames[0];
    model::Bay bay{.name = "all"};
    bay.x = {plane_at(project, Axis::x, false), plane_at(project, Axis::x, true)};
    bay.y = {plane_at(project, Axis::y, false), plane_at(project, Axis::y, true)};
    bay.z = {plane_at(project, Axis::z, false), plane_at(project, Axis::z, true)};
    frame.bays = {bay};
    frame.panels = {{.name = "front",
                     .bay = "all",
                     .face_axis = Axis::y,
                     .face_side = minus,
                     .material = "5052-H32",
                     .thickness = "1/16 in",
                     .cut_outs = {opening}}};
    const auto resolved = tests::resolved(project);
    const auto* finding = tests::first_of(resolved, "interference");
    return finding == nullptr ? std::string() : finding->what;
}

}  // namespace

TEST_CASE("a brace outside lies flat on the posts, which lie outermost", "[model][brace]") {
    const auto resolved = tests::resolved(braced_box({across_face(true)}));
    const auto braces = braces_of(resolved);
    REQUIRE(braces.size() == 1);
    const Piece& brace = resolved.pieces[braces[0]];
    CHECK(brace.extents.lo[1] == -inches_64(8));
    CHECK(brace.extents.hi[1] == 0);
    const auto& lean = resolved.leans[brace.lean];
    CHECK(lean.run[0] == Approx(0.8));
    CHECK(lean.run[2] == Approx(0.6));
    CHECK(brace.run == Axis::x);
    CHECK(resolved.marks[brace.mark].name == "BR1");
}

TEST_CASE("an end to the outline is cut along both edges of the corner", "[model][brace]") {
    const auto resolved = tests::resolved(braced_box({across_face(true)}));
    const auto braces = braces_of(resolved);
    REQUIRE(braces.size() == 1);
    const Piece& brace = resolved.pieces[braces[0]];
    // The point lies in the corner, in the middle of the width of 1 1/2 in. From there the cut
    // along the post recedes by 0.6 / 0.8 for each length across, the one along the rail by
    // 0.8 / 0.6: 0.5625 in and 1 in over half the width.
    CHECK(brace.length == inches(50));
    Corners expected{{inches(1), 0},
                     {inches(50) - inches_64(36), 0},
                     {inches(50), inches_64(48)},
                     {inches(49), inches_64(96)},
                     {inches_64(36), inches_64(96)},
                     {0, inches_64(48)}};
    const auto& corners = corners_of(resolved, brace);
    REQUIRE(corners.size() == expected.size());
    for (std::size_t i = 0; i < corners.size(); ++i) {
        CHECK(is_near(corners[i][0], expected[i][0]));
        CHECK(is_near(corners[i][1], expected[i][1]));
    }
}

TEST_CASE("square ends stop short of the outline, at a mark of the tape", "[model][brace]") {
    auto diagonal = across_face(true);
    diagonal.ends = BraceEnds::square;
    const auto resolved = tests::resolved(braced_box({diagonal}));
    const auto braces = braces_of(resolved);
    REQUIRE(braces.size() == 1);
    const Piece& brace = resolved.pieces[braces[0]];
    // Each end is held back by 1 in, by the rail's edge: 48 in, which is a mark.
    CHECK(brace.length == inches(48));
    CHECK(brace.extents.lo[0] >= 0);
    CHECK(brace.extents.lo[2] >= 0);
    CHECK(brace.extents.hi[0] <= inches(40));
    CHECK(brace.extents.hi[2] <= inches(30));
    CHECK(corners_of(resolved, brace).size() == 4);
}

TEST_CASE("at a corner the rivets go through brace, post and rail", "[model][brace]") {
    const auto project = braced_box({across_face(true)});
    const auto resolved = tests::resolved(project);
    const auto braces = braces_of(resolved);
    REQUIRE(braces.size() == 1);
    const auto holes = resolved.holes_of(resolved.pieces[braces[0]]);
    CHECK(holes.size() == 4);
    for (const auto& hole : holes) {
        CHECK(hole.operation == model::HoleOperation::match_drill);
        const auto& fastener = resolved.fasteners[hole.fastener];
        CHECK(fastener.stack_count == 3);
        CHECK(fastener.grip == 3 * inches_64(8));
        CHECK(resolved.joints[fastener.joint].brace == braces[0]);
    }
    CHECK(tests::count_of(resolved, "loose_end") == 0);
    CHECK(tests::count_of(resolved, "interference") == 0);
    CHECK(tests::count_of(resolved, "too_few_fasteners") == 0);
}

TEST_CASE("a braced box is right in all that can be read from its files", "[model][brace]") {
    for (const bool at_back : {false, true}) {
        for (const bool rises : {true, false}) {
            for (const auto side : {FaceSide::outside, FaceSide::inside}) {
                for (const auto ends : {BraceEnds::outline, BraceEnds::square}) {
                    auto diagonal = across_face(rises, at_back);
                    diagonal.side = side;
                    diagonal.ends = ends;
                    const auto project = braced_box({diagonal});
                    CAPTURE(at_back, rises, static_cast<int>(side), static_cast<int>(ends));
                    CHECK(complaints_of(project) == tests::Complaints{});
                }
            }
        }
    }
}

TEST_CASE("a brace inside stays clear of what stands in the corner", "[model][brace]") {
    auto diagonal = across_face(true);
    diagonal.side = FaceSide::inside;
    const auto resolved = tests::resolved(braced_box({diagonal}));
    const auto braces = braces_of(resolved);
    REQUIRE(braces.size() == 1);
    const Piece& brace = resolved.pieces[braces[0]];
    // On the rails' inner faces: they lie 1/8 in behind the posts and are 1/8 in thick.
    CHECK(brace.extents.lo[1] == inches_64(16));
    CHECK(brace.extents.hi[1] == inches_64(24));
    CHECK(tests::count_of(resolved, "interference") == 0);
    CHECK(brace.length < inches(50));
}

TEST_CASE("two braces that mirror each other are of one mark", "[model][brace]") {
    const auto resolved =
        tests::resolved(braced_box({across_face(true), across_face(false, true)}));
    const auto braces = braces_of(resolved);
    REQUIRE(braces.size() == 2);
    CHECK(resolved.pieces[braces[0]].mark == resolved.pieces[braces[1]].mark);
}

TEST_CASE("the area in which a brace touches a post is a polygon", "[model][brace]") {
    const auto project = braced_posts();
    const auto resolved = tests::resolved(project);
    const auto braces = braces_of(resolved);
    REQUIRE(braces.size() == 1);
    double area = 0.0;
    int laps = 0;
    for (const auto& joint : resolved.joints) {
        if (joint.polygon == model::no_index) continue;
        const auto& corners = resolved.lap_polygons[joint.polygon];
        CHECK(corners.size() == 4);
        for (std::size_t i = 0; i < corners.size(); ++i) {
            const auto& p = corners[i];
            const auto& q = corners[(i + 1) % corners.size()];
            area += (p[0] * q[1] - p[1] * q[0]) / 2.0 / 25.4e6 / 25.4e6;
        }
        ++laps;
    }
    // A strip 1 1/2 in wide over a leg 1 in wide that it crosses with 0.8 of its way: 1.875 in2.
    REQUIRE(laps == 2);
    CHECK(area == Approx(2 * 1.875).epsilon(1e-6));
    CHECK(tests::count_of(resolved, "too_few_fasteners") == 0);
    CHECK(tests::count_of(resolved, "loose_end") == 4);  // of the posts
    CHECK(resolved.holes_of(resolved.pieces[braces[0]]).size() == 4);
}

TEST_CASE("holes in the post lie on the tape's marks, and the brace is drilled through them",
          "[model][brace]") {
    const auto resolved = tests::resolved(braced_posts());
    std::size_t in_posts = 0;
    for (const auto& hole : resolved.holes) {
        if (resolved.pieces[hole.piece].kind == PieceKind::brace) {
            CHECK(hole.operation == model::HoleOperation::match_drill);
            continue;
        }
        ++in_posts;
        CHECK(hole.operation == model::HoleOperation::drill);
        CHECK(hole.from_datum % inches_64(2) == 0);
        CHECK(hole.gauge % inches_64(2) == 0);
    }
    CHECK(in_posts == 4);
}

TEST_CASE("a brace that crosses a set-in post gets a shim between", "[model][brace]") {
    auto project = braced_box({across_face(true)});
    model::Member post = project.frames[0].members[0];
    for (const auto& member : project.frames[0].members) {
        if (member.run == Axis::z) post = member;
    }
    project.frames[0].planes.push_back({"middle", Axis::x, "20 in"});
    post.name = "middle post";
    post.on = {"middle", plane_at(project, Axis::y, false)};
    post.legs = {plus, plus};
    project.frames[0].members.push_back(post);
    const auto resolved = tests::resolved(project);
    std::size_t shims = 0;
    for (const auto& joint : resolved.joints) {
        const bool is_of_brace = resolved.pieces[joint.pieces[0]].kind == PieceKind::brace;
        if (!is_of_brace || joint.shim == model::no_index) continue;
        ++shims;
        const Piece& shim = resolved.pieces[joint.shim];
        // Behind the rails, which lie behind the corner posts.
        CHECK(shim.extents.lo[1] == 0);
        CHECK(shim.extents.hi[1] == inches_64(16));
        CHECK(joint.fastener_count == 2);
    }
    CHECK(shims == 1);
    CHECK(complaints_of(project) == tests::Complaints{});
}

TEST_CASE("a brace of what is no flat is left out and says so", "[model][brace]") {
    auto diagonal = across_face(true);
    diagonal.stock = "main";
    const auto resolved = tests::resolved(braced_box({diagonal}));
    CHECK(braces_of(resolved).empty());
    CHECK(tests::count_of(resolved, "brace_not_flat") == 1);
}

TEST_CASE("a brace between one place and itself is left out and says so", "[model][brace]") {
    auto diagonal = across_face(true);
    diagonal.to = diagonal.from;
    const auto resolved = tests::resolved(braced_box({diagonal}));
    CHECK(braces_of(resolved).empty());
    CHECK(tests::count_of(resolved, "no_length") == 1);
}

TEST_CASE("a brace along a rail is left out and says so", "[model][brace]") {
    auto diagonal = across_face(true);
    diagonal.to[1] = diagonal.from[1];
    const auto resolved = tests::resolved(braced_box({diagonal}));
    CHECK(braces_of(resolved).empty());
    CHECK(tests::count_of(resolved, "brace_along_axis") == 1);
}

TEST_CASE("a node by planes of the wrong axes is told with the plane", "[model][brace]") {
    auto diagonal = across_face(true);
    std::swap(diagonal.from[0], diagonal.from[1]);
    const auto resolved = tests::resolved(braced_box({diagonal}));
    CHECK(braces_of(resolved).empty());
    CHECK(tests::count_of(resolved, "wrong_axis") == 2);
}

TEST_CASE("a face on which no member lies cannot be braced", "[model][brace]") {
    auto diagonal = across_face(true);
    auto project = braced_box({diagonal});
    project.frames[0].planes.push_back({"inner", Axis::y, "7 in"});
    project.frames[0].diagonals[0].face = "inner";
    const auto resolved = tests::resolved(project);
    CHECK(braces_of(resolved).empty());
    CHECK(tests::count_of(resolved, "brace_on_no_member") == 1);
}

TEST_CASE("crossing braces on one side of a face run into each other", "[model][brace]") {
    const auto resolved = tests::resolved(braced_box({across_face(true), across_face(false)}));
    const auto* finding = tests::first_of(resolved, "interference");
    REQUIRE(finding != nullptr);
    CHECK(where_text(*finding).find("diagonal rising") != std::string::npos);
    CHECK(where_text(*finding).find("diagonal falling") != std::string::npos);
    REQUIRE(finding->numbers.size() == 1);
    CHECK(std::get<engine::Length>(finding->numbers[0].value).nm() == inches_64(8));
}

TEST_CASE("an end in the air is a loose end of the brace", "[model][brace]") {
    auto project = braced_box({across_face(true)});
    project.frames[0].planes.push_back({"short of it", Axis::x, "20 in"});
    project.frames[0].planes.push_back({"half way", Axis::z, "15 in"});
    project.frames[0].diagonals[0].to = {"short of it", "half way"};
    const auto resolved = tests::resolved(project);
    const auto* finding = tests::first_of(resolved, "loose_end");
    REQUIRE(finding != nullptr);
    CHECK(where_text(*finding).find("diagonal rising") != std::string::npos);
    CHECK(tests::count_of(resolved, "loose_end") == 1);
}

TEST_CASE("what a brace follows is never itself drilled through the brace", "[model][brace]") {
    for (const auto& project : {braced_box({across_face(true)}), braced_posts()}) {
        const auto resolved = tests::resolved(project);
        for (const Index brace : braces_of(resolved)) {
            for (const auto& hole : resolved.holes_of(resolved.pieces[brace])) {
                CHECK(resolved.pieces[hole.mate].kind == PieceKind::bar);
            }
        }
        for (const auto& hole : resolved.holes) {
            const auto& stack = resolved.fasteners[hole.fastener];
            if (stack.stack_count == 3 && resolved.pieces[hole.piece].kind == PieceKind::bar) {
                CHECK(resolved.pieces[hole.mate].kind == PieceKind::bar);
            }
        }
    }
}

TEST_CASE("braces that are the same are of one mark whatever their length is rounded to",
          "[model][brace]") {
    const Nm width = inches(GENERATE(36, 24, 41));
    auto other_way = across_face(true, true, width);
    other_way.name = "other way";
    std::swap(other_way.from, other_way.to);
    auto falling_at_back = across_face(false, true, width);
    falling_at_back.side = FaceSide::inside;
    auto falling_other_way = across_face(false, false, width);
    falling_other_way.side = FaceSide::inside;
    falling_other_way.name = "falling other way";
    std::swap(falling_other_way.from, falling_other_way.to);
    const auto project = braced_box(
        {across_face(true, false, width), other_way, falling_at_back, falling_other_way}, width);
    const auto resolved = tests::resolved(project);
    const auto braces = braces_of(resolved);
    REQUIRE(braces.size() == 4);
    CHECK(resolved.pieces[braces[0]].mark == resolved.pieces[braces[1]].mark);
    CHECK(resolved.pieces[braces[2]].mark == resolved.pieces[braces[3]].mark);
    CHECK(complaints_of(project) == tests::Complaints{});
}

TEST_CASE("what is said of a brace and a member counts for the lap that the brace covers",
          "[model][brace]") {
    auto project = braced_box({across_face(true)});
    const auto pair = covered_pair(tests::resolved(project), project);
    const auto& member = pair[GENERATE(std::size_t{0}, std::size_t{1})];
    project.frames[0].joints = {{.members = {"rising", member}, .count = 1}};
    const auto resolved = tests::resolved(project);
    Index wanting_one = 0;
    for (const auto& joint : resolved.joints) wanting_one += joint.wanted == 1 ? 1U : 0U;
    CHECK(wanting_one == 1);
    CHECK(tests::count_of(resolved, "no_such_joint") == 0);
    CHECK(tests::count_of(resolved, "joint_held_by_other") == 0);
}

TEST_CASE("what is said of the covered lap itself comes first, and the other entry is told why",
          "[model][brace]") {
    auto project = braced_box({across_face(true)});
    const auto [post, rail] = covered_pair(tests::resolved(project), project);
    project.frames[0].joints = {{.members = {post, rail}, .count = 2},
                                {.members = {"rising", rail}, .count = 1}};
    const auto resolved = tests::resolved(project);
    CHECK(tests::count_of(resolved, "no_such_joint") == 0);
    const auto* finding = tests::first_of(resolved, "joint_held_by_other");
    REQUIRE(finding != nullptr);
    CHECK(finding->what == "its fasteners are those of " + post + " + " + rail);
}

TEST_CASE("a panel that a brace runs into is in doubt where an opening may leave it room",
          "[model][brace]") {
    const auto beside = panel_on_brace_says(
        {.name = "vent", .least = {"4 in", "22 in"}, .most = {"8 in", "24 in"}});
    CHECK(beside.starts_with("these two would have to be in the same place"));
    const auto on_its_way = panel_on_brace_says(
        {.name = "vent", .least = {"16 in", "10 in"}, .most = {"24 in", "20 in"}});
    CHECK(on_its_way.starts_with("these two may have to be in the same place"));
}

TEST_CASE("a recipe for a brace and a member is told", "[model][brace]") {
    auto project = braced_box({across_face(true)});
    project.frames[0].joints = {{.members = {"rising", "m1"}, .recipe = "flush"}};
    CHECK(tests::count_of(tests::resolved(project), "recipe_of_brace") == 1);
}

TEST_CASE("a joint of a brace is called so in pieces.json", "[model][brace]") {
    const auto files = tests::written_files(braced_posts(), tests::shipped_catalogue());
    CHECK(files.at("pieces.json").find("\"recipe\":\"brace\"") != std::string::npos);
    CHECK(files.at("pieces.json").find("\"recipe\":\"staggered lap\"") == std::string::npos);
}

TEST_CASE("a brace that is riveted on over two laps joins what they join", "[model][brace]") {
    tests::FrameBuilder builder("corners");
    builder.member("main", Axis::z, {0, 0}, 0, inches(10), {plus, plus});
    builder.member("main", Axis::x, {0, 0}, 0, inches(10), {plus, plus});
    builder.member("main", Axis::z, {inches(40), 0}, inches(20), inches(30), {minus, plus});
    builder.member("main", Axis::x, {0, inches(30)}, inches(30), inches(40), {plus, minus});
    Diagonal diagonal{.name = "strut", .stock = "flat", .face = builder.plane(Axis::y, 0)};
    diagonal.from = {builder.plane(Axis::x, 0), builder.plane(Axis::z, 0)};
    diagonal.to = {builder.plane(Axis::x, inches(40)), builder.plane(Axis::z, inches(30))};
    diagonal.side = FaceSide::outside;
    auto project = two_posts({});
    project.frames[0] = builder.frame();
    CHECK(tests::count_of(tests::resolved(project), "not_joined") == 1);
    project.frames[0].diagonals = {diagonal};
    const auto resolved = tests::resolved(project);
    CHECK(std::ranges::count_if(resolved.joints, [](const model::Joint& joint) {
              return joint.brace != model::no_index;
          }) == 2);
    CHECK(tests::count_of(resolved, "not_joined") == 0);
}

TEST_CASE("the check of marks sees braces that lean", "[support][checks][brace]") {
    auto other_way = across_face(true, true);
    other_way.name = "other way";
    const auto project = braced_box({across_face(true), other_way});
    auto files = tests::written_files(project, tests::shipped_catalogue());
    auto& text = files["pieces.json"];
    const std::string mark = "\"mark\":\"BR1\"";
    const auto last = text.rfind(mark);
    REQUIRE(last != std::string::npos);
    REQUIRE(text.find(mark) != last);
    text.replace(last, mark.size(), "\"mark\":\"BR9\"");
    const auto complaints = tests::skeleton_complaints(files, tests::rules_of(project));
    CHECK(std::ranges::count(complaints, "marks BR1 and BR9 are for the same piece") == 1);
}

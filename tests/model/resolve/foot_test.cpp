// Values by hand. In inches the tape's mark is 1/32 in. A 1/4 in screw has a free hole of drill H,
// 0.266 in (6.7564 mm), and a pan head of at most 0.492 in.
#include "model/resolve/recipe.h"

#include "tests/model/resolve/resolve_support.h"

using model::Axis;
using model::Hole;
using model::Index;
using model::Piece;
using model::PieceKind;
using model::Project;
using model::Resolved;
using model::Sense;
using tests::count_of;
using tests::first_of;
using tests::FrameBuilder;
using tests::inches;
using tests::inches_64;
using tests::Nm;
using tests::resolved;
using tests::stock_of;

namespace {

// One post, 20 in high, its legs towards plus, with a foot on the floor.
Project post_of(const std::string& section) {
    FrameBuilder builder("rack");
    auto& post = builder.member("main", Axis::z, {0, 0}, 0, inches(20), {Sense::plus, Sense::plus});
    post.name = "post";
    post.foot_from = true;
    auto project = tests::project_of(builder);
    project.stock = {stock_of("main", section, "6063-T52")};
    return project;
}

std::vector<Piece> feet_of(const Resolved& resolved) {
    std::vector<Piece> found;
    for (const auto& piece : resolved.pieces) {
        if (piece.kind == PieceKind::foot) found.push_back(piece);
    }
    return found;
}

std::vector<Hole> fixing_holes(const Resolved& resolved) {
    std::vector<Hole> found;
    for (const auto& hole : resolved.holes) {
        if (hole.fastener == model::no_index) found.push_back(hole);
    }
    return found;
}

// The wall of a foot in which its fixing hole is.
const model::Plate& pad_of(const Resolved& resolved) {
    const Hole hole = fixing_holes(resolved).at(0);
    return resolved.pieces[hole.piece].plates[hole.wall];
}

const Project& long_legged_box() {
    static const Project project = [] {
        auto box = tests::box_project({}, "angle 1 x 1 x 1/8", "6063-T52");
        for (auto& member : box.frames[0].members) {
            if (member.run != Axis::z) continue;
            member.foot_from = true;
            member.allowance_from = "-3 in";
        }
        return box;
    }();
    return project;
}

}  // namespace

TEST_CASE("a foot stands flush with its member's end and is riveted to it", "[resolve][foot]") {
    const auto all = resolved(post_of("angle 1 x 1 x 1/8"));
    const auto feet = feet_of(all);
    REQUIRE(feet.size() == 1);
    CHECK(feet[0].extents.lo[2] == 0);
    CHECK(feet[0].extents.hi[2] == inches(1));
    CHECK(feet[0].serves == std::array<Index, 2>{0, 0});
    REQUIRE(all.joints.size() == 1);
    CHECK(all.joints[0].fastener_count == 2);
    CHECK(model::recipes()[all.joints[0].recipe].name == "foot");
    CHECK(all.marks[feet[0].mark].name == "FT1");
    CHECK(pad_of(all).box.lo[2] == 0);
    CHECK(pad_of(all).box.hi[2] == inches_64(8));
}

// Twice the hole's diameter is 0.532 in; the foot is at least 2 x 0.532 + 1/32 in long: 1 1/8 in.
// The hole keeps clear of the leg, 1/8 in, by the head's half, 0.246 in, and 1/32 in: from 0.402 in
// to 1 - 0.532 = 0.468 in, of which 7/16 in is the mark in the middle.
TEST_CASE("a foot's hole keeps its edge distance and room for the screw's head",
          "[resolve][foot]") {
    const auto all = resolved(post_of("angle 1 x 1 x 1/8"));
    const auto holes = fixing_holes(all);
    REQUIRE(holes.size() == 1);
    CHECK(holes[0].diameter == 6'756'400);
    CHECK(holes[0].operation == model::HoleOperation::clearance);
    CHECK(holes[0].mate == model::no_index);
    CHECK(holes[0].gauge == inches_64(28));
    CHECK(all.pieces[holes[0].piece].length == inches_64(72));
    CHECK(holes[0].from_datum == inches_64(36));
}

TEST_CASE("the shop says for which screw a foot is drilled", "[resolve][foot]") {
    auto project = post_of("angle 1 x 1 x 1/8");
    project.shop.foot_screw = "machine screw 10-32";
    const auto& catalogue = tests::shipped_catalogue();
    const auto drill_of = [&](const Resolved& all) {
        return catalogue.drills[fixing_holes(all).at(0).drill].name;
    };
    CHECK(drill_of(resolved(project)) ==
          model::find_screw(catalogue, "machine screw 10-32")->free_drill);
    project.shop.foot_screw = "a nail";
    CHECK(count_of(resolved(project), "unknown_screw") == 1);
    CHECK(drill_of(resolved(project)) == "H");
    CHECK(drill_of(resolved(post_of("angle 30 x 30 x 3 mm"))) == "6.6 mm");
}

// The box is 36 in wide and 18 in deep, and has no rails below: a driver reaches the inside of the
// posts, where the feet take no room beside the box.
TEST_CASE("a foot lies inside the frame where there is room", "[resolve][foot]") {
    auto project = long_legged_box();
    std::erase_if(project.frames[0].members, [](const auto& member) {
        return std::find(member.on.begin(), member.on.end(), "z0") != member.on.end();
    });
    const auto all = resolved(project);
    REQUIRE(feet_of(all).size() == 4);
    for (const auto& foot : feet_of(all)) {
        CHECK(foot.extents.lo[0] >= 0);
        CHECK(foot.extents.hi[0] <= inches(36));
        CHECK(foot.extents.lo[1] >= 0);
        CHECK(foot.extents.hi[1] <= inches(18));
    }
}

// The rails 3 in above the floor turn their legs inward, over where a driver 6 in long would stand.
TEST_CASE("a foot lies outside where a driver has no room inside", "[resolve][foot]") {
    for (const auto& foot : feet_of(resolved(long_legged_box()))) {
        const bool is_beyond = foot.extents.lo[0] < 0 || foot.extents.hi[0] > inches(36) ||
                               foot.extents.lo[1] < 0 || foot.extents.hi[1] > inches(18);
        CHECK(is_beyond);
    }
}

// The van's wall stands at the left of the box, which is turned by half: its side at x = 36 in lies
// at X = 38 - 36 = 2 in, where the wall is 1 in from X = 1 in, or the box before it ends.
TEST_CASE("no foot stands into a wall of the room", "[resolve][foot]") {
    auto project = long_legged_box();
    project.frames[0].origin = {"38 in", "20 in", "3 in"};
    project.frames[0].quarter_turns = 2;
    const auto beyond = [](const Resolved& all) {
        const auto feet = feet_of(all);
        return std::count_if(feet.begin(), feet.end(),
                             [](const Piece& foot) { return foot.extents.hi[0] > inches(36); });
    };
    const auto is_open = beyond(resolved(project));
    project.room = {{.name = "wall",
                     .shape = model::WallProfile{.at = "1 in",
                                                 .inside = Sense::plus,
                                                 .from = "-10 ft",
                                                 .to = "10 ft",
                                                 .offsets = {{"0", "1 in"}, {"6 ft", "3 in"}}},
                     .note = {}}};
    const auto walled = resolved(project);
    CHECK(feet_of(walled).size() == 4);
    CHECK(beyond(walled) == 0);
    project.room = {{.name = "box",
                     .shape = model::BoxObstacle{.least = {"0", "-10 ft", "0"},
                                                 .most = {"2 in", "10 ft", "6 ft"}},
                     .note = {}}};
    CHECK(beyond(resolved(project)) == 0);
    CHECK(is_open > 0);
}

TEST_CASE("a foot lies on the outside of a tube, where the rivet tool reaches", "[resolve][foot]") {
    auto project = post_of("tube 1 1/2 x 1 1/2 x 1/8");
    project.stock.push_back(stock_of("angle", "angle 1 x 1 x 1/8", "6063-T52"));
    const auto all = resolved(project);
    REQUIRE(feet_of(all).size() == 1);
    REQUIRE(all.fasteners.size() == 2);
    CHECK(all.pieces[all.fasteners[0].stack[0].piece].kind == PieceKind::foot);
}

TEST_CASE("posts that run on below the rails have their feet there", "[resolve][foot]") {
    const auto all = resolved(long_legged_box());
    CHECK(feet_of(all).size() == 4);
    CHECK(fixing_holes(all).size() == 4);
    CHECK(count_of(all, "interference") == 0);
    for (const auto& foot : feet_of(all)) CHECK(foot.extents.lo[2] == -inches(3));
}

TEST_CASE("what to heed before a van is drilled is told once for a frame", "[resolve][foot]") {
    const auto all = resolved(long_legged_box());
    REQUIRE(count_of(all, "feet_to_fix") == 1);
    const auto* note = first_of(all, "feet_to_fix");
    CHECK(note->severity == model::Severity::note);
    CHECK(note->concerns.size() == 4);
    CHECK(note->what.find("4 feet have a hole (drill H)") == 0);
    CHECK(note->mend.find("wiring, fuel, gas and brake lines") != std::string::npos);
}

// The rails of the box lie on the floor and take both legs of the post there.
TEST_CASE("a foot without room says what would make some", "[resolve][foot]") {
    auto project = tests::box_project({}, "angle 1 x 1 x 1/8", "6063-T52");
    for (auto& member : project.frames[0].members) member.foot_from = member.run == Axis::z;
    const auto all = resolved(project);
    CHECK(feet_of(all).empty());
    CHECK(count_of(all, "foot_has_no_room") == 4);
    CHECK(first_of(all, "foot_has_no_room")->mend.find("allowance") != std::string::npos);
}

TEST_CASE("a foot at an end within the frame is not made", "[resolve][foot]") {
    auto project = long_legged_box();
    for (auto& member : project.frames[0].members) {
        member.foot_from = false;
        if (member.run == Axis::y) member.foot_to = true;
    }
    const auto all = resolved(project);
    CHECK(feet_of(all).empty());
    CHECK(count_of(all, "foot_not_outside") == 4);
}

TEST_CASE("a foot without an angle in stock, or without a drill, is not made", "[resolve][foot]") {
    CHECK(count_of(resolved(post_of("flat 1 x 1/8")), "foot_lacks_angle") == 1);
    auto project = post_of("angle 1 x 1 x 1/8");
    project.shop.drills = {"#30"};
    const auto all = resolved(project);
    CHECK(count_of(all, "foot_lacks_drill") == 1);
    CHECK(first_of(all, "foot_lacks_drill")->mend.find("drill H") != std::string::npos);
    project.shop.drills = {"#30", "F"};
    CHECK(fixing_holes(resolved(project)).size() == 1);
}

TEST_CASE("a foot at the far end of a member looks the other way", "[resolve][foot]") {
    auto project = post_of("angle 1 x 1 x 1/8");
    project.frames[0].members[0].foot_from = false;
    project.frames[0].members[0].foot_to = true;
    const auto all = resolved(project);
    REQUIRE(feet_of(all).size() == 1);
    CHECK(pad_of(all).box.hi[2] == inches(20));
    CHECK(pad_of(all).box.lo[2] == inches(20) - inches_64(8));
}

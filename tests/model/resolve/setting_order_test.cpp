// Rivets that the setting tool reaches only before other pieces are on.
#include "model/resolve/setting_order.h"

#include "tests/model/resolve/resolve_support.h"

#include <array>

using model::Axis;
using model::Sense;
using tests::FrameBuilder;
using tests::inches;
using tests::inches_64;
using tests::Nm;

namespace {

constexpr auto plus = Sense::plus;

// A post and a rail of flat bar that lap in the plane y = 0, and two more rails before and behind
// them, at those distances.
model::Project flats(Nm before, Nm behind) {
    FrameBuilder builder("flats");
    const auto flat = [&](Axis run, std::array<Nm, 2> on, Nm from, Nm to) {
        builder.member("main", run, on, from, to, {plus, plus});
    };
    flat(Axis::z, {inches(8), 0}, 0, inches(20));
    flat(Axis::x, {0, inches(10)}, 0, inches(20));
    flat(Axis::x, {-before, inches(10)}, 0, inches(20));
    flat(Axis::x, {behind, inches(10)}, 0, inches(20));
    auto project = tests::project_of(builder);
    project.stock[0].section = "flat 1 x 1/8";
    for (auto& member : project.frames[0].members) {
        member.turned = member.run == Axis::z;  // flat in the face
    }
    return project;
}

// Two rivets along y that point at each other; each head has the other joint's pieces before it.
model::Resolved face_to_face() {
    model::Resolved made;
    made.frames = {{.piece_count = 4}};
    made.shop.nose_radius = inches_64(14);
    made.shop.nose_reach = inches_64(32);
    made.shop.housing_radius = inches_64(32);
    for (const Nm y : {0, 1, 16, 17}) {
        model::Piece piece;
        piece.member = static_cast<model::Index>(made.pieces.size());
        piece.plates[0].box = {{0, y * inches_64(8), 0},
                               {inches(1), (y + 1) * inches_64(8), inches(1)}};
        piece.plates[0].normal_axis = 1;
        piece.plate_count = 1;
        piece.extents = piece.plates[0].box;
        made.pieces.push_back(piece);
    }
    made.joints = {{.pieces = {0, 1}, .first_fastener = 0, .fastener_count = 1},
                   {.pieces = {2, 3}, .first_fastener = 1, .fastener_count = 1}};
    const Nm middle = inches_64(32);
    // Heads on the sides that look at each other.
    made.fasteners = {{.joint = 0, .at = {middle, inches_64(16), middle}, .axis = 1, .drive = -1},
                      {.joint = 1, .at = {middle, inches_64(128), middle}, .axis = 1, .drive = 1}};
    return made;
}

model::Project four_members() {
    model::Project project;
    project.frames.resize(1);
    project.frames[0].name = "frame";
    for (const char* name : {"a", "b", "c", "d"}) {
        project.frames[0].members.push_back({.name = name});
    }
    return project;
}

}  // namespace

TEST_CASE("rivets between two rails are set before one of them is on, and an order is given",
          "[model][setting_order]") {
    const auto project = flats(inches(2), inches(2));
    const auto resolved = tests::resolved(project);
    REQUIRE_FALSE(resolved.joints.empty());
    CHECK(resolved.joints[0].fastener_count == 2);
    const auto* early = tests::first_of(resolved, "set_before");
    REQUIRE(early != nullptr);
    CHECK(early->what.find("m3") != std::string::npos);
    const auto* order = tests::first_of(resolved, "setting_order");
    REQUIRE(order != nullptr);
    const auto at = [&](const char* name) { return order->mend.find(name); };
    CHECK(at("m1") < at("m3"));
    CHECK(at("m2") < at("m3"));
    CHECK(tests::count_of(resolved, "no_setting_order") == 0);
}

TEST_CASE("where the tool has room on one side nothing is said of an order",
          "[model][setting_order]") {
    const auto resolved = tests::resolved(flats(inches(2), inches(8)));
    CHECK(resolved.joints[0].fastener_count == 2);
    CHECK(tests::count_of(resolved, "set_before") == 0);
    CHECK(tests::count_of(resolved, "setting_order") == 0);
}

TEST_CASE("two joints that keep the tool off each other have no order", "[model][setting_order]") {
    auto resolved = face_to_face();
    const std::array<model::EarlyJoint, 2> both{{{0, false}, {1, false}}};
    model::report_setting_order(four_members(), both, resolved);
    const auto* none = tests::first_of(resolved, "no_setting_order");
    REQUIRE(none != nullptr);
    CHECK(none->concerns.size() == 2);
    CHECK(tests::count_of(resolved, "set_before") == 0);
}

TEST_CASE("when one of two heads is reached from elsewhere there is an order",
          "[model][setting_order]") {
    auto resolved = face_to_face();
    const std::array<model::EarlyJoint, 1> one{{{1, false}}};
    model::report_setting_order(four_members(), one, resolved);
    REQUIRE(tests::first_of(resolved, "setting_order") != nullptr);
    CHECK(tests::first_of(resolved, "setting_order")->mend.find("c, d, a, then b") !=
          std::string::npos);
}

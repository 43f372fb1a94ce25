#include "model/room/clearance.h"

#include "model/resolve/resolve.h"
#include "model/room/resolve_in_room.h"

#include "tests/model/room/room_projects.h"

#include <algorithm>
#include <optional>

namespace {

using namespace model;
using room_tests::box;
using room_tests::cabinet;
using room_tests::catalogue;

std::vector<Finding> found(const Project& project) {
    const auto resolved = resolve(project, catalogue());
    return room_findings(project, catalogue(), resolved, {});
}

std::optional<Finding> finding(const Project& project, std::string_view code) {
    const auto all = found(project);
    const auto at = std::ranges::find(all, code, &Finding::code);
    if (at == all.end()) return std::nullopt;
    return *at;
}

Nm number(const Finding& finding, std::string_view name) {
    const auto at = std::ranges::find(finding.numbers, name, &FindingNumber::name);
    REQUIRE(at != finding.numbers.end());
    return std::get<engine::Length>(at->value).nm();
}

bool concerns(const Finding& finding, std::string_view name) {
    return std::ranges::any_of(finding.concerns,
                               [&](const Subject& subject) { return subject.name == name; });
}

}  // namespace

TEST_CASE("a cabinet with room all round has nothing to say of the room", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.room.push_back(box("fridge", {"47", "0", "0"}, {"60", "20", "30"}));
    CHECK(found(project).empty());
}

// Heads stand out from the cabinet's outer faces, so they are what comes nearest.
TEST_CASE("the nearest is the head of a rivet, and the distance is exact", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.room.push_back(box("fridge", {"46 3/16", "0", "0"}, {"60", "20", "30"}));
    const auto near = finding(project, "clearance");
    REQUIRE(near.has_value());
    CHECK(near->severity == Severity::warning);
    CHECK(concerns(*near, "fridge"));
    const auto resolved = resolve(project, catalogue());
    REQUIRE(!resolved.fasteners.empty());
    const auto& rivet = catalogue().rivets[resolved.fasteners[0].spec.index];
    CHECK(number(*near, "distance") == tests::inches(3) / 16 - rivet.head_height_most.nm());
    CHECK(number(*near, "wanted") == tests::inches(1) / 4);
    CHECK(number(*near, "x") == tests::inches_64(46 * 64 + 12));
}

TEST_CASE("an obstacle may be given its own clearance", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.room.push_back(box("fridge", {"46 3/16", "0", "0"}, {"60", "20", "30"}));
    project.room[0].clearance = "1/16";
    CHECK(found(project).empty());
    project.room[0].clearance = "1/2";
    CHECK(finding(project, "clearance").has_value());
}

TEST_CASE("what stands in an obstacle is an error with the depth", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    // Reaches 3/8 in into the right-hand side, behind the posts and between them.
    project.room.push_back(box("rib", {"45 5/8", "0", "0"}, {"60", "40", "40"}));
    const auto in = finding(project, "inside_obstacle");
    REQUIRE(in.has_value());
    CHECK(in->severity == Severity::error);
    CHECK(number(*in, "depth") >= tests::inches(3) / 8);
    CHECK(number(*in, "depth") <= tests::inches(1) / 2);  // with the heads
    CHECK(concerns(*in, "post front right"));
    CHECK(concerns(*in, "post back right"));
    CHECK_FALSE(concerns(*in, "post back left"));
}

TEST_CASE("what only stays clear may be touched but not entered", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.room.push_back(box("walkway", {"46 1/4", "0", "0"}, {"60", "40", "80"}));
    project.room[0].stays_clear = true;
    CHECK(found(project).empty());
    project.dimensions[0].formula = "36 1/2 in";
    const auto in = finding(project, "in_the_way");
    REQUIRE(in.has_value());
    CHECK(in->severity == Severity::error);
}

TEST_CASE("pieces behind a leaning wall are found by how far they stand into it", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.room.push_back({.name = "wall",
                            .shape = WallProfile{.at = "46 in",
                                                 .inside = Sense::minus,
                                                 .from = "0",
                                                 .to = "60",
                                                 .offsets = {{"0", "0"}, {"30 in", "3 in"}}}});
    const auto in = finding(project, "inside_obstacle");
    REQUIRE(in.has_value());
    // 3 in at the top, and what the heads stand out there.
    CHECK(number(*in, "depth") >= tests::inches(3));
    CHECK(number(*in, "depth") <= tests::inches(3) + tests::inches(1) / 8);
}

TEST_CASE("a cabinet turned in the room is measured where it stands", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.frames[0].quarter_turns = 1;  // its 36 in now run along Y, its depth to the left
    project.room.push_back(box("fridge", {"-20", "46 1/2", "0"}, {"20", "60", "30"}));
    CHECK(found(project).empty());
    project.room[0] = box("fridge", {"-20", "46 1/8", "0"}, {"20", "60", "30"});
    CHECK(finding(project, "clearance").has_value());
}

TEST_CASE("an obstacle that is none is told, and so is a scan that is not read", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.room.push_back(box("inside out", {"5", "0", "0"}, {"4", "1", "1"}));
    project.room.push_back({.name = "van", .shape = ScannedObstacle{.file = "van.ply"}});
    CHECK(finding(project, "bad_obstacle")->severity == Severity::error);
    CHECK(finding(project, "scan_not_read")->severity == Severity::warning);
}

namespace {

// A square of two triangles across X at 47 in, tilted by the file's axes.
std::shared_ptr<const Scan> flat_scan() {
    const std::vector<engine::Vector> points{{0.0, -2000.0, -2000.0},
                                             {0.0, 2000.0, -2000.0},
                                             {0.0, 2000.0, 2000.0},
                                             {0.0, -2000.0, 2000.0}};
    const std::vector<engine::TriangleTree::Corners> triangles{{0, 1, 2}, {0, 2, 3}};
    return std::make_shared<Scan>(Scan{.tree = engine::TriangleTree(points, triangles)});
}

}  // namespace

TEST_CASE("a scan is where it was put and turned", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    ScannedObstacle scan{.file = "wall.stl", .at = {"46 1/2", "0", "0"}};
    project.room.push_back({.name = "scan", .shape = scan});
    const ScanLibrary scans{{scan_key(scan), flat_scan()}};
    const auto resolved = resolve(project, catalogue());
    const auto findings = [&] { return room_findings(project, catalogue(), resolved, scans); };
    CHECK(findings().empty());
    std::get<ScannedObstacle>(project.room[0].shape).at[0] = "46 1/8";
    REQUIRE(findings().size() == 1);
    CHECK(findings()[0].code == "clearance");
    std::get<ScannedObstacle>(project.room[0].shape).at[0] = "45 1/2";
    REQUIRE(findings().size() == 1);
    CHECK(findings()[0].code == "inside_obstacle");
    CHECK(number(findings()[0], "depth") >= tests::inches(1) / 2);
    CHECK(number(findings()[0], "depth") <= tests::inches(5) / 8);
    // Turned by a quarter about Z it runs along X.
    std::get<ScannedObstacle>(project.room[0].shape) = {
        .file = "wall.stl", .at = {"0", "28 1/8", "0"}, .turn = {"0", "0", "90"}};
    REQUIRE(findings().size() == 1);
    CHECK(findings()[0].code == "clearance");
}

TEST_CASE("frames keep the gap that the shop asks for, and no head stands in another frame",
          "[model][room]") {
    auto project = cabinet({"0", "0", "0"});
    auto second = project.frames[0];
    second.name = "neighbour";
    second.origin = {"36 in", "0", "0"};
    project.frames.push_back(second);
    const auto touching = finding(project, "fastener_enters");
    REQUIRE(touching.has_value());
    CHECK(touching->severity == Severity::error);
    project.frames[1].origin[0] = "36 1/2 in";
    CHECK(found(project).empty());
    project.shop.frame_gap = "3/4 in";
    const auto gap = finding(project, "frame_gap");
    REQUIRE(gap.has_value());
    CHECK(gap->severity == Severity::warning);
}

// A member and a panel may well be called alike.
TEST_CASE("a gap is told of each thing, also where two kinds of things have one name",
          "[model][room]") {
    auto project = cabinet({"0", "0", "0"});
    auto second = project.frames[0];
    second.name = "neighbour";
    second.origin = {"36 1/2 in", "0", "0"};
    project.frames.push_back(second);
    project.shop.frame_gap = "3/4 in";
    const auto gaps = [&] {
        return std::ranges::count(found(project), "frame_gap", &Finding::code);
    };
    const auto before = gaps();
    project.frames[0].panels.push_back({.name = project.frames[0].members[0].name,
                                        .bay = project.frames[0].bays[0].name,
                                        .face_axis = Axis::x,
                                        .face_side = Sense::plus,
                                        .material = "5052-H32",
                                        .thickness = "1/8 in"});
    const auto with_panel = gaps();
    project.frames[0].panels[0].name = "side";
    CHECK(with_panel == gaps());
    CHECK(with_panel > before);
}

TEST_CASE("a drawer that meets the walkway's far wall says how far it comes", "[model][room]") {
    auto project = cabinet({"10", "30", "0"});
    project.frames[0].panels.push_back({.name = "drawer front",
                                        .bay = project.frames[0].bays[0].name,
                                        .face_axis = Axis::y,
                                        .face_side = Sense::minus,
                                        .material = "5052-H32",
                                        .thickness = "1/8 in",
                                        .use = PanelUse::drawer_front});
    CHECK_FALSE(finding(project, "drawer_blocked").has_value());
    project.room.push_back(box("wheel well", {"0", "0", "0"}, {"80", "16", "12"}));
    const auto blocked = finding(project, "drawer_blocked");
    REQUIRE(blocked.has_value());
    CHECK(blocked->severity == Severity::error);
    CHECK(number(*blocked, "wanted") == tests::inches(18));
    // From the front's face, 1/8 in before the frame, to the well at 16 in.
    CHECK(number(*blocked, "free") <= tests::inches(14) - tests::inches(1) / 8);
    CHECK(number(*blocked, "free") > tests::inches(14) - tests::inches(1) / 4);
}

namespace {

Panel drawer_front(const Frame& frame, Sense side) {
    return {.name = "drawer front",
            .bay = frame.bays[0].name,
            .face_axis = Axis::y,
            .face_side = side,
            .material = "5052-H32",
            .thickness = "1/8 in",
            .use = PanelUse::drawer_front};
}

}  // namespace

TEST_CASE("a drawer may be drawn out into a walkway, and with a door it is told", "[model][room]") {
    auto project = cabinet({"10", "30", "0"});
    project.frames[0].panels.push_back(drawer_front(project.frames[0], Sense::minus));
    project.room.push_back(box("walkway", {"0", "0", "0"}, {"80", "29", "80"}));
    project.room[0].stays_clear = true;
    CHECK(found(project).empty());
    project.room[0] = {.name = "side door",
                       .shape = DoorSwing{.hinge = {"60", "0", "0"},
                                          .width = "30",
                                          .height = "60",
                                          .closed = "180",
                                          .open = "120"},
                       .stays_clear = true};
    const auto meets = finding(project, "drawer_meets_door");
    REQUIRE(meets.has_value());
    CHECK(meets->severity == Severity::warning);
    CHECK(concerns(*meets, "drawer front"));
    CHECK(concerns(*meets, "side door"));
    CHECK_FALSE(finding(project, "drawer_blocked").has_value());
    std::get<DoorSwing>(project.room[0].shape).hinge = {"60", "-20", "0"};
    CHECK(found(project).empty());
}

TEST_CASE("drawers of two frames that face each other across a narrow aisle are told",
          "[model][room]") {
    auto project = cabinet({"0", "40", "0"});
    project.frames[0].panels.push_back(drawer_front(project.frames[0], Sense::minus));
    auto other = project.frames[0];
    other.name = "across";
    other.origin = {"0", "0", "0"};
    other.panels[0].face_side = Sense::plus;
    project.frames.push_back(other);
    const auto meets = finding(project, "drawer_meets_drawer");  // 22 in between, each 18 in deep
    REQUIRE(meets.has_value());
    CHECK(meets->severity == Severity::warning);
    CHECK_FALSE(finding(project, "drawer_blocked").has_value());
    project.frames[0].origin[1] = "55";
    CHECK_FALSE(finding(project, "drawer_meets_drawer").has_value());
}

// Its front's lower edge lies on the frame's bottom plane.
TEST_CASE("a drawer may slide along a scanned surface, and is stopped by one in its way",
          "[model][room]") {
    auto project = cabinet({"10", "30", "0"});
    project.frames[0].panels.push_back(drawer_front(project.frames[0], Sense::minus));
    const ScannedObstacle scan{.file = "floor.stl"};
    project.room.push_back({.name = "floor", .shape = scan, .clearance = "0"});
    const auto codes = [&](double z) {
        const std::vector<engine::Vector> points{
            {-3000.0, -3000.0, z}, {3000.0, -3000.0, z}, {0.0, 3000.0, z}};
        const std::vector<engine::TriangleTree::Corners> triangles{{0, 1, 2}};
        const engine::TriangleTree tree(points, triangles);
        const ScanLibrary scans{{scan_key(scan), std::make_shared<const Scan>(Scan{.tree = tree})}};
        const auto all = room_findings(project, catalogue(), resolve(project, catalogue()), scans);
        return std::ranges::count(all, "drawer_blocked", &Finding::code);
    };
    CHECK(codes(0.0) == 0);
    CHECK(codes(1.0) == 1);
}

TEST_CASE("resolving in a room adds what the room has to say", "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    const auto before = resolve_in_room(project, catalogue());
    CHECK(before.findings == resolve(project, catalogue()).findings);
    project.room.push_back(box("rib", {"45 5/8", "0", "0"}, {"60", "40", "40"}));
    const auto after = resolve_in_room(project, catalogue());
    CHECK(after.findings.size() == before.findings.size() + 1);
    CHECK(after.pieces.size() == before.pieces.size());
}

// Stepping a frame over an obstacle: which planes, bays and members come of it, and what is
// refused.
#include "model/catalogue/catalogue.h"
#include "model/project/edit.h"
#include "model/resolve/resolve.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Matchers::Contains;
using engine::ErrorCode;
using namespace model;

namespace {

const Catalogue& catalogue() {
    static const auto loaded = load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) FAIL(engine::to_text(loaded.error()));
    return *loaded;
}

Project edited(const Project& before, const Edit& edit) {
    auto after = apply(before, edit);
    if (!after) FAIL(to_text(after.error()));
    return *after;
}

engine::Error refused(const Project& before, const Edit& edit) {
    const auto after = apply(before, edit);
    REQUIRE_FALSE(after.has_value());
    CHECK_FALSE(after.error().message.empty());
    return after.error();
}

// A counter 48 x 22 x 34 in of 1 1/4 in angle, which takes two rivets in every lap of a step.
Project counter_project(std::vector<Formula> dividers = {}, std::vector<Formula> shelves = {}) {
    const Project empty{
        .stock = {{.name = "angle", .section = "angle 1 1/4 x 1 1/4 x 1/8", .alloy = "6063-T52"}}};
    return edited(empty, StartBoxFrame{.frame = "counter",
                                       .stock = "angle",
                                       .width = "48",
                                       .depth = "22",
                                       .height = "34",
                                       .shelf_levels = std::move(shelves),
                                       .dividers = std::move(dividers)});
}

Obstacle box_at(Place least, Place most) {
    return {.name = "wheel well", .shape = WheelWell{.least = least, .most = most}};
}

// 31 in long, 9 in into the counter and 12 in high, 8 in from its left end.
const Obstacle well_in_middle = box_at({"8", "13", "-1"}, {"39", "30", "12"});

Project with(Project project, Obstacle obstacle) {
    return edited(project, PutObstacle{std::move(obstacle)});
}

const StepOver over_well{.frame = "counter", .obstacle = "wheel well"};

Project stepped(const Obstacle& obstacle) {
    return edited(with(counter_project(), obstacle), over_well);
}

const Frame& frame_of(const Project& project) { return project.frames.front(); }

template <class T>
const T* find(const std::vector<T>& things, const std::string& name) {
    const auto found = std::ranges::find(things, name, &T::name);
    return found == things.end() ? nullptr : &*found;
}

template <class T>
const T& named(const std::vector<T>& things, const std::string& name) {
    const T* found = find(things, name);
    if (found == nullptr) FAIL("there is no " + name);
    return *found;
}

engine::Nm place(const Project& project, const std::string& plane) {
    const Resolved resolved = resolve(project, catalogue());
    const auto& planes = frame_of(project).planes;
    const auto found = std::ranges::find(planes, plane, &Plane::name);
    if (found == planes.end()) FAIL("there is no plane " + plane);
    const auto at = resolved.frames[0].planes[static_cast<std::size_t>(found - planes.begin())];
    return at.position.value_or(-1);
}

constexpr engine::Nm quarters(engine::Nm count) { return count * 6'350'000; }

std::string faults(const Project& project) {
    std::string text;
    for (const Finding& finding : resolve(project, catalogue()).findings) {
        if (finding.severity == Severity::note) continue;
        text += finding.code + ": " + where_text(finding) + "\n";
    }
    return text;
}

long roots(const Project& project) {
    return std::ranges::count(frame_of(project).members, Seat::root, &Member::seat);
}

}  // namespace

// ---- what comes of it ---------------------------------------------------------------------------

TEST_CASE("a well in the middle of the back gets planes at its faces and the clearance",
          "[model][edit][step_over]") {
    const Project after = stepped(well_in_middle);
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 1));
    CHECK(place(after, "wheel well right") == quarters(4 * 39 + 1));
    CHECK(place(after, "wheel well front") == quarters(4 * 13 - 1));
    CHECK(place(after, "wheel well top") == quarters(4 * 12 + 1));
    CHECK(find(frame_of(after).planes, "wheel well back") == nullptr);
    CHECK(find(frame_of(after).planes, "wheel well bottom") == nullptr);
}

TEST_CASE("three re-entrant edges meet at each inner end of a closed notch",
          "[model][edit][step_over]") {
    const Project after = stepped(well_in_middle);
    CHECK(roots(after) == 5);
    const Member& front = named(frame_of(after).members, "edge wheel well front top");
    CHECK(front.run == Axis::x);
    CHECK(front.from == "wheel well left");
    CHECK(front.to == "wheel well right");
    CHECK(front.legs == std::array{Sense::plus, Sense::minus});
    CHECK(faults(after) == "");
}

TEST_CASE("a member in the way is cut at the step, and its second part has a name of its own",
          "[model][edit][step_over]") {
    const Frame after = frame_of(stepped(well_in_middle));
    CHECK(named(after.members, "rail back bottom").to == "wheel well left");
    CHECK(named(after.members, "rail back bottom 2").from == "wheel well right");
    CHECK(named(after.members, "rail back bottom 2").to == "right");
    CHECK(named(after.members, "post back left").from == "bottom");
}

TEST_CASE("the largest part of a bay keeps its name", "[model][edit][step_over]") {
    const Frame after = frame_of(stepped(well_in_middle));
    CHECK(after.bays.size() == 4);
    const Bay& inside = named(after.bays, "inside");
    CHECK(inside.z == std::array<std::string, 2>{"wheel well top", "top"});
    CHECK(inside.y == std::array<std::string, 2>{"front", "back"});
    CHECK(named(after.bays, "inside front").y[1] == "wheel well front");
    CHECK(named(after.bays, "inside left").x[1] == "wheel well left");
    CHECK(named(after.bays, "inside right").x[0] == "wheel well right");
}

TEST_CASE("every kind of notch is framed without a fault", "[model][edit][step_over]") {
    struct Notch {
        const char* words;
        Place least;
        Place most;
        long roots;
    };
    const auto notch = GENERATE(
        Notch{"along the back", {"-1", "13", "-1"}, {"50", "30", "12"}, 1},
        Notch{"along the front", {"-1", "-5", "-1"}, {"50", "9", "12"}, 1},
        Notch{"along the left end", {"-1", "-5", "-1"}, {"14", "30", "12"}, 1},
        Notch{"in the back left corner", {"-1", "13", "-1"}, {"14", "30", "12"}, 3},
        Notch{"in the front right corner", {"30", "-1", "-1"}, {"50", "9", "12"}, 3},
        Notch{"in the middle of the back", {"8", "13", "-1"}, {"39", "30", "12"}, 5},
        Notch{"through the bottom, front to back", {"8", "-1", "-1"}, {"39", "30", "12"}, 2},
        Notch{"out of the top, along the back", {"-1", "13", "20"}, {"50", "30", "40"}, 1},
        Notch{"out of the top, in a corner", {"30", "13", "20"}, {"50", "30", "40"}, 3},
        Notch{"out of the top, in the middle", {"8", "13", "20"}, {"39", "30", "40"}, 5},
        Notch{"up the back, bottom to top", {"8", "13", "-1"}, {"39", "30", "40"}, 2},
        Notch{"up a corner", {"30", "13", "-1"}, {"50", "30", "40"}, 1},
        Notch{"a pocket in the back", {"8", "13", "8"}, {"39", "30", "24"}, 8},
        Notch{"a hump in the floor", {"8", "6", "-1"}, {"39", "16", "12"}, 8},
        Notch{"a pipe's way, bottom to top", {"8", "6", "-1"}, {"39", "16", "40"}, 4},
        Notch{"all of the bottom", {"-1", "-1", "-1"}, {"50", "30", "5"}, 0});
    CAPTURE(notch.words);
    const auto dividers = GENERATE(std::vector<Formula>{}, std::vector<Formula>{"24"});
    CAPTURE(dividers.size());
    const Project after =
        edited(with(counter_project(dividers), box_at(notch.least, notch.most)), over_well);
    CHECK(faults(after) == "");
    CHECK(roots(after) == notch.roots);
}

TEST_CASE("a divider over the well stands on the step, and its foot goes on before it",
          "[model][edit][step_over]") {
    const Project after = edited(with(counter_project({"24"}), well_in_middle), over_well);
    const auto& members = frame_of(after).members;
    CHECK(named(members, "post back divider 1").from == "wheel well top");
    CHECK(named(members, "rail divider 1 bottom").to == "wheel well front");
    const Member& post = named(members, "post divider 1 wheel well front");
    CHECK(post.legs == std::array{Sense::plus, Sense::minus});
    CHECK(post.to == "wheel well top");
    CHECK(named(members, "rail divider 1 wheel well top").from == "wheel well front");
}

TEST_CASE("a shelf that the well cuts gets rails round the well", "[model][edit][step_over]") {
    Obstacle high = box_at({"8", "13", "-1"}, {"39", "30", "20"});
    const Project after = edited(with(counter_project({}, {"10"}), high), over_well);
    const auto& members = frame_of(after).members;
    CHECK(named(members, "rail wheel well front shelf 1").legs[1] == Sense::minus);
    CHECK(named(members, "rail wheel well left shelf 1").from == "wheel well front");
    CHECK(named(members, "rail back shelf 1").to == "wheel well left");
    CHECK(faults(after) == "");
}

TEST_CASE("a re-entrant edge is made of angle where the frame is of several stocks",
          "[model][edit][step_over]") {
    Project project = counter_project();
    project =
        edited(project, PutStock{{.name = "flat", .section = "flat 1 x 1/8", .alloy = "6063-T52"}});
    std::vector<std::string> rails;
    for (const Member& member : frame_of(project).members) {
        if (member.run != Axis::z) rails.push_back(member.name);
    }
    project = edited(project, SetMemberStock{"counter", rails, "flat"});
    const Project after = edited(with(project, well_in_middle), over_well);
    for (const Member& member : frame_of(after).members) {
        if (member.seat == Seat::root) CHECK(member.stock == "angle");
        if (member.name == "rail well left bottom") CHECK(member.stock == "flat");
    }
    project = edited(project, SetMemberStock{"counter", {}, "flat"});
    CHECK_THAT(refused(with(project, well_in_middle), over_well).message, Contains("angle"));
}

// ---- it stays parametric ------------------------------------------------------------------------

TEST_CASE("plain values of the faces become dimensions that the obstacle refers to",
          "[model][edit][step_over]") {
    const Project after = stepped(well_in_middle);
    const auto& well = std::get<WheelWell>(after.room.front().shape);
    CHECK(well.most[2] == "wheel well top");
    CHECK(named(after.dimensions, "wheel well top").formula == "12");
    CHECK(well.least[2] == "-1");  // of a face that cuts nothing
    CHECK(after.shop.clearance == "clearance");
    CHECK(named(after.dimensions, "clearance").formula == Shop{}.clearance);
    CHECK(named(frame_of(after).planes, "wheel well top").position ==
          "wheel well top + clearance - counter origin z");
}

TEST_CASE("formulas of names are taken as they are, and no name is taken twice",
          "[model][edit][step_over]") {
    Project project = counter_project();
    project = edited(project, PutDimension{{.name = "wheel well top", .formula = "11"}});
    project = edited(project, PutDimension{{.name = "row", .formula = "6"}});
    Obstacle well = box_at({"row + 2 in", "13", "-1"}, {"39", "30", "12"});
    well.clearance = "row / 12";
    const Project after = edited(with(project, well), over_well);
    const auto& shape = std::get<WheelWell>(after.room.front().shape);
    CHECK(shape.least[0] == "row + 2 in");
    CHECK(shape.most[2] == "wheel well top 2");
    CHECK(named(frame_of(after).planes, "wheel well left").position ==
          "(row + 2 in) - counter origin x - (row / 12)");
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 2));
}

TEST_CASE("moving the obstacle moves the step", "[model][edit][step_over]") {
    Project after = stepped(well_in_middle);
    after = edited(after, SetFormula{"wheel well top", "14 1/2"});
    after = edited(after, SetFormula{"wheel well least x", "10"});
    after = edited(after, SetFormula{"clearance", "1/2 in"});
    CHECK(place(after, "wheel well top") == quarters(4 * 15));
    CHECK(place(after, "wheel well left") == quarters(4 * 10 - 2));
    CHECK(faults(after) == "");
}

TEST_CASE("a clearance that is stated becomes the obstacle's", "[model][edit][step_over]") {
    const Project before = with(counter_project(), well_in_middle);
    const Project after = edited(before, StepOver{"counter", "wheel well", "3/4 in"});
    CHECK(after.room.front().clearance == "wheel well clearance");
    CHECK(place(after, "wheel well top") == quarters(4 * 12 + 3));
    CHECK(after.shop == before.shop);
}

TEST_CASE("what only stays clear is stepped over without a clearance", "[model][edit][step_over]") {
    Obstacle walkway = well_in_middle;
    walkway.stays_clear = true;
    CHECK(place(stepped(walkway), "wheel well top") == quarters(4 * 12));
}

TEST_CASE("the step stays at the obstacle when the frame is put elsewhere",
          "[model][edit][step_over]") {
    Project after = stepped(well_in_middle);
    after = edited(after, PlaceFrame{"counter", {"2", "0", "1/2 in"}, 0});
    CHECK(place(after, "wheel well left") == quarters(4 * 6 - 1));
    CHECK(place(after, "wheel well top") == quarters(4 * 12 + 1 - 2));
    CHECK(frame_of(after).origin[0] == "counter origin x");
    after = edited(after, PutDimension{{.name = "row", .formula = "3"}});
    after = edited(after, PlaceFrame{"counter", {"row", "0", "0"}, 0});
    CHECK(frame_of(after).origin[0] == "row");
    CHECK(place(after, "wheel well left") == quarters(4 * 5 - 1));
    CHECK(place(after, "left") == 0);
}

TEST_CASE("a frame whose place is a sum can be put elsewhere after the step",
          "[model][edit][step_over]") {
    Project project = edited(counter_project(), PutDimension{{.name = "row", .formula = "1"}});
    project = edited(project, PlaceFrame{"counter", {"row + 1 in", "0", "0"}, 0});
    Project after = edited(with(project, well_in_middle), over_well);
    CHECK(place(after, "wheel well left") == quarters(4 * 6 - 1));
    CHECK(named(after.dimensions, "counter origin x").formula == "row + 1 in");
    after = edited(after, PlaceFrame{"counter", {"3", "0", "0"}, 0});
    CHECK(place(after, "wheel well left") == quarters(4 * 5 - 1));
    CHECK(named(after.dimensions, "row").formula == "1");
}

TEST_CASE("a frame is not turned away from what its step stands at", "[model][edit][step_over]") {
    const Project before = with(counter_project(), well_in_middle);
    CHECK(apply(before, PlaceFrame{"counter", {"0", "0", "0"}, 1}));
    const Project after = edited(before, over_well);
    const auto error = refused(after, PlaceFrame{"counter", {"0", "0", "0"}, 1});
    CHECK(error.where == "frame counter, plane wheel well left");
    CHECK_THAT(error.message, Contains("before it is stepped over"));
    CHECK(apply(after, PlaceFrame{"counter", {"1", "0", "0"}, 4}));
    const Project flat =
        edited(with(counter_project(), box_at({"-1", "-1", "-1"}, {"50", "30", "5"})), over_well);
    CHECK(apply(flat, PlaceFrame{"counter", {"0", "0", "0"}, 1}));  // only its top is cut
}

TEST_CASE("a measure of the obstacle that is typed over moves the step too",
          "[model][edit][step_over]") {
    Project after = stepped(well_in_middle);
    Obstacle well = after.room.front();
    std::get<WheelWell>(well.shape).most[2] = "14 1/2";
    well.clearance = "1/2 in";
    after = edited(after, PutObstacle{well, well.name});
    CHECK(named(after.dimensions, "wheel well top").formula == "14 1/2");
    CHECK(std::get<WheelWell>(after.room.front().shape).most[2] == "wheel well top");
    CHECK(place(after, "wheel well top") == quarters(4 * 15));
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 2));
    well = after.room.front();
    well.clearance = "";
    after = edited(after, PutObstacle{well, well.name});
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 1));
    after.shop.clearance = "3/4 in";
    after = edited(stepped(well_in_middle), SetShop{after.shop});
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 3));
    CHECK(after.shop.clearance == "clearance");
}

TEST_CASE("a measure that is typed over leaves alone what else stands on its dimension",
          "[model][edit][step_over]") {
    Project project = edited(counter_project(), PutDimension{{.name = "row", .formula = "8"}});
    project = edited(project, PutDimension{{.name = "long", .formula = "31"}});
    project = with(project, box_at({"row", "13", "-1"}, {"row + long", "30", "12"}));
    Project after = edited(project, over_well);
    Obstacle well = after.room.front();
    std::get<WheelWell>(well.shape).least[0] = "10";
    after = edited(after, PutObstacle{well, well.name});
    CHECK(named(after.dimensions, "row").formula == "8");
    CHECK(place(after, "wheel well left") == quarters(4 * 10 - 1));
    CHECK(place(after, "wheel well right") == quarters(4 * 39 + 1));
    std::get<WheelWell>(well.shape).least[0] = "row 2";
    std::get<WheelWell>(well.shape).most[0] = "row + 30 in";
    after = edited(after, PutObstacle{well, well.name});
    CHECK(place(after, "wheel well left") == quarters(4 * 10 - 1));
    CHECK(place(after, "wheel well right") == quarters(4 * 38 + 1));
}

// ---- heads and tails ----------------------------------------------------------------------------

TEST_CASE("the planes keep what heads stand out beyond the clearance, as a dimension of the frame",
          "[model][edit][step_over]") {
    StepOver edit = over_well;
    edit.standing = "1/4 in";
    Project after = edited(with(counter_project(), well_in_middle), edit);
    CHECK(named(after.dimensions, "counter heads").formula == "1/4 in");
    CHECK(named(frame_of(after).planes, "wheel well top").position ==
          "wheel well top + clearance + counter heads - counter origin z");
    CHECK(place(after, "wheel well top") == quarters(4 * 12 + 2));
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 2));
    after = edited(after, SetFormula{"counter heads", "1/2 in"});
    CHECK(place(after, "wheel well top") == quarters(4 * 12 + 3));
    edit.standing = "-1/4 in";
    CHECK_THAT(refused(with(counter_project(), well_in_middle), edit).message,
               Contains("below zero"));
}

TEST_CASE("steps of one frame share the room for heads, and it grows with what they want",
          "[model][edit][step_over]") {
    Project project = with(counter_project(), box_at({"-1", "13", "-1"}, {"14", "30", "12"}));
    Obstacle other = box_at({"34", "13", "-1"}, {"50", "30", "8"});
    other.name = "other well";
    project = with(project, other);
    StepOver edit = over_well;
    edit.standing = "1/4 in";
    project = edited(project, edit);
    edit.obstacle = "other well";
    const Formula wanted = GENERATE("1/8 in", "1/2 in");
    edit.standing = wanted;
    project = edited(project, edit);
    const engine::Nm both = wanted == "1/8 in" ? 2 : 3;
    CHECK(find(project.dimensions, "counter heads 2") == nullptr);
    CHECK(place(project, "wheel well top") == quarters(4 * 12 + both));
    CHECK(place(project, "other well top") == quarters(4 * 8 + both));
    CHECK(faults(project) == "");
}

TEST_CASE("a place that another thing shares gets a dimension of its own when the frame moves",
          "[model][edit][step_over]") {
    Project project = edited(counter_project(), PutDimension{{.name = "row", .formula = "1"}});
    project = edited(project, PutDimension{{.name = "twice", .formula = "2 * row"}});
    project = edited(project, PlaceFrame{"counter", {"row", "0", "0"}, 0});
    Project after = edited(with(project, well_in_middle), over_well);
    after = edited(after, PlaceFrame{"counter", {"3", "0", "0"}, 0});
    CHECK(named(after.dimensions, "row").formula == "1");
    CHECK(frame_of(after).origin[0] == "row 2");
    CHECK(place(after, "wheel well left") == quarters(4 * 5 - 1));
}

TEST_CASE("the planes of a turned frame are measured the other way", "[model][edit][step_over]") {
    Project project = counter_project();
    // Seen from above the counter's width runs along Y and its depth towards smaller X.
    project = edited(project, PlaceFrame{"counter", {"60", "20", "0"}, 1});
    project = with(project, box_at({"30", "28", "-1"}, {"47", "59", "12"}));
    const Project after = edited(project, over_well);
    CHECK(named(frame_of(after).planes, "wheel well front").position ==
          "counter origin x - wheel well most x - clearance");
    CHECK(place(after, "wheel well front") == quarters(4 * 13 - 1));
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 1));
    CHECK(place(after, "wheel well right") == quarters(4 * 39 + 1));
    CHECK(faults(after) == "");
}

TEST_CASE("a cylinder is stepped over by its foot, radius and length", "[model][edit][step_over]") {
    const Obstacle pipe{
        .name = "pipe",
        .shape = CylinderObstacle{
            .foot = {"24", "22", "-1"}, .along = Axis::z, .radius = "6", .length = "15"}};
    Project after = edited(with(counter_project(), pipe), StepOver{"counter", "pipe"});
    CHECK(place(after, "pipe left") == quarters(4 * 18 - 1));
    CHECK(place(after, "pipe front") == quarters(4 * 16 - 1));
    CHECK(place(after, "pipe top") == quarters(4 * 14 + 1));
    after = edited(after, SetFormula{"pipe radius", "7"});
    CHECK(place(after, "pipe right") == quarters(4 * 31 + 1));
    CHECK(faults(after) == "");
}

TEST_CASE("a frame can be stepped over one well after another, also of the same size",
          "[model][edit][step_over]") {
    const Formula top = GENERATE("12", "8");
    const Formula front = GENERATE("13", "9");
    CAPTURE(top, front);
    Project project = with(counter_project(), box_at({"-1", "13", "-1"}, {"14", "30", "12"}));
    Obstacle other = box_at({"34", front, "-1"}, {"50", "30", top});
    other.name = "other well";
    project = with(project, other);
    project = edited(project, over_well);
    project = edited(project, StepOver{"counter", "other well"});
    CHECK(roots(project) == 6);
    CHECK(faults(project) == "");
}

TEST_CASE("a well whose name begins with another's keeps its own step",
          "[model][edit][step_over]") {
    Project project = with(counter_project(), box_at({"-1", "13", "-1"}, {"14", "30", "12"}));
    Obstacle second = box_at({"34", "13", "-1"}, {"50", "30", "8"});
    second.name = "wheel well 2";
    project = edited(with(project, second), over_well);
    project = edited(project, StepOver{"counter", "wheel well 2"});
    Obstacle first = project.room.front();
    first.clearance = "1 in";
    project = edited(project, PutObstacle{first, ""});
    CHECK(place(project, "wheel well top") == quarters(4 * 13));
    CHECK(place(project, "wheel well 2 top") == quarters(4 * 8 + 1));
    CHECK(faults(project) == "");
}

TEST_CASE("a step goes on following a well that gets another name", "[model][edit][step_over]") {
    Project project = edited(with(counter_project(), well_in_middle), over_well);
    Obstacle well = project.room.front();
    well.name = "left well";
    project = edited(project, PutObstacle{well, "wheel well"});
    CHECK(find(frame_of(project).planes, "wheel well top") == nullptr);
    CHECK(place(project, "left well top") == quarters(4 * 12 + 1));
    CHECK(faults(project) == "");
    well = project.room.front();
    std::get<WheelWell>(well.shape).most[2] = "14 1/2";
    project = edited(project, PutObstacle{well, ""});
    well.clearance = "1/2 in";
    project = edited(project, PutObstacle{well, ""});
    CHECK(place(project, "left well top") == quarters(4 * 15));
    CHECK(faults(project) == "");
}

TEST_CASE("a step flush with a shelf is refused", "[model][edit][step_over]") {
    const Project before = with(counter_project({}, {"12 1/4"}), well_in_middle);
    CHECK(refused(before, over_well).where == "frame counter, plane shelf 1");
}

// ---- what the frame holds -----------------------------------------------------------------------

TEST_CASE("feet and what was said of joints go with the members that take their place",
          "[model][edit][step_over]") {
    Project project = counter_project();
    Member post = named(frame_of(project).members, "post back left");
    post.foot_from = true;
    project = edited(project, PutMember{"counter", post});
    project = edited(
        project,
        PutJoint{"counter", {.members = {"rail back bottom", "post back right"}, .count = 1}});
    project = with(project, box_at({"-1", "13", "-1"}, {"14", "30", "12"}));
    const Frame after = frame_of(edited(project, over_well));
    CHECK_FALSE(named(after.members, "post back left").foot_from);
    CHECK(named(after.members, "post left wheel well front").foot_from);
    REQUIRE(after.joints.size() == 1);
    CHECK(after.joints[0].members[0] == "rail back bottom");
    CHECK(named(after.members, "rail back bottom").from == "wheel well right");
}

TEST_CASE("a panel stays where its face is left whole, on the part of the bay that has it",
          "[model][edit][step_over]") {
    Project project = with(counter_project(), well_in_middle);
    const Panel door{.name = "door",
                     .bay = "inside",
                     .face_axis = Axis::y,
                     .face_side = Sense::minus,
                     .material = "5052-H32",
                     .thickness = "1/16 in",
                     .use = PanelUse::door};
    project = edited(project, PutPanel{"counter", door});
    const Frame after = frame_of(edited(project, over_well));
    const Bay& bay = named(after.bays, named(after.panels, "door").bay);
    CHECK(bay.x == std::array<std::string, 2>{"left", "right"});
    CHECK(bay.z == std::array<std::string, 2>{"bottom", "top"});
}

TEST_CASE("a panel that the step would cut is named and refused", "[model][edit][step_over]") {
    Project project = with(counter_project(), well_in_middle);
    const Panel back{.name = "back sheet",
                     .bay = "inside",
                     .face_axis = Axis::y,
                     .face_side = Sense::plus,
                     .material = "5052-H32",
                     .thickness = "1/16 in"};
    project = edited(project, PutPanel{"counter", back});
    CHECK(refused(project, over_well).where == "frame counter, panel back sheet");
}

TEST_CASE("a bay that goes wholly takes nothing of the user's along", "[model][edit][step_over]") {
    Project project = counter_project({}, {"12"});
    project =
        edited(project, PutLoad{"counter", {.name = "tools", .mass_kg = 9, .where = "level 1"}});
    Obstacle high = box_at({"-1", "-1", "-1"}, {"50", "30", "16"});
    CHECK(refused(with(project, high), over_well).where == "frame counter, load tools");
    project =
        edited(project, PutLoad{"counter", {.name = "tools", .mass_kg = 9, .where = "level 2"}});
    const Frame after = frame_of(edited(with(project, high), over_well));
    CHECK(after.bays.size() == 1);
}

TEST_CASE("point loads, diagonals and leaning members in the way are refused",
          "[model][edit][step_over]") {
    const Project project = with(counter_project(), well_in_middle);
    const auto where = [&](const Edit& edit) {
        return refused(edited(project, edit), over_well).where;
    };
    CHECK(where(PutLoad{"counter", {.name = "tank", .where = Place{"20", "20", "5"}}}) ==
          "frame counter, load tank");
    Diagonal brace{.name = "brace", .stock = "angle", .face = "back"};
    brace.from = {"left", "bottom"};
    brace.to = {"right", "top"};
    CHECK(where(PutDiagonal{"counter", brace}) == "frame counter, diagonal brace");
    Leaning strut{.name = "strut", .stock = "angle", .face = "back"};
    strut.from = {"left", "bottom"};
    strut.to = {"right", "top"};
    CHECK(where(PutLeaning{"counter", strut}) == "frame counter, leaning member strut");
    brace.face = "front";
    CHECK(apply(edited(project, PutDiagonal{"counter", brace}), over_well));
}

// ---- what is refused ----------------------------------------------------------------------------

TEST_CASE("an obstacle that does not reach into the frame leaves nothing to step over",
          "[model][edit][step_over]") {
    const auto beside = GENERATE(box_at({"60", "0", "0"}, {"70", "9", "9"}),
                                 box_at({"0", "0", "-9"}, {"40", "9", "-1"}),
                                 box_at({"8", "6", "8"}, {"39", "16", "24"}));  // inside, free
    const Project before = with(counter_project(), beside);
    CHECK_THAT(refused(before, over_well).message, Contains("nothing to step over"));
}

TEST_CASE("an obstacle that leaves nothing or two parts of the frame is refused",
          "[model][edit][step_over]") {
    const Project all = with(counter_project(), box_at({"-1", "-1", "-1"}, {"50", "30", "40"}));
    CHECK_THAT(refused(all, over_well).message, Contains("nothing would remain"));
    const Project two = with(counter_project(), box_at({"20", "-1", "-1"}, {"28", "30", "40"}));
    CHECK_THAT(refused(two, over_well).message, Contains("in two"));
}

TEST_CASE("a step too near to a plane names the plane", "[model][edit][step_over]") {
    const Project before = with(counter_project({"9 1/2"}), well_in_middle);
    const auto error = refused(before, over_well);
    CHECK(error.where == "frame counter, plane divider 1");
    CHECK_THAT(error.message, Contains("1 3/4"));
    StepOver near = over_well;
    near.apart = "1 1/2 in";
    CHECK(apply(before, near));
}

TEST_CASE("what cannot be worked out is refused with its place", "[model][edit][step_over]") {
    Project project = with(counter_project(), well_in_middle);
    CHECK(refused(project, StepOver{"locker", "wheel well"}).code == ErrorCode::unknown_name);
    CHECK(refused(project, StepOver{"counter", "box"}).code == ErrorCode::unknown_name);
    CHECK(refused(project, StepOver{"counter", "wheel well", "7 +"}).where ==
          "obstacle wheel well");
    Obstacle wall{.name = "wall", .shape = WallProfile{.at = "0", .from = "0", .to = "90"}};
    CHECK_THAT(refused(with(project, wall), StepOver{"counter", "wall"}).message,
               Contains("a box, a wheel well or a cylinder"));
    Project broken = with(project, box_at({"9", "13", "-1"}, {"lost", "30", "12"}));
    CHECK(refused(broken, over_well).code == ErrorCode::unknown_name);
    broken = with(project, box_at({"39", "13", "-1"}, {"8", "30", "12"}));
    CHECK_THAT(refused(broken, over_well).message, Contains("between its faces"));
}

TEST_CASE("the undo list says what was stepped over what", "[model][edit][step_over]") {
    CHECK(label_of(over_well) == "Step counter over wheel well");
}

// Stepping a frame over an obstacle: which planes, bays and members come of it, and what is
// refused.
#include "tests/model/project/stepped_counter.h"

using Catch::Matchers::Contains;
using engine::ErrorCode;
using namespace step_over_tests;

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

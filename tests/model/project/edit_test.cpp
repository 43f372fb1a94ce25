#include "model/project/edit.h"

#include "model/project/project_json.h"

#include "tests/model/project/full_project.h"

#include <catch2/catch.hpp>

using Catch::Matchers::Contains;
using engine::ErrorCode;
using namespace model;

namespace {

Project edited(const Project& before, const Edit& edit) {
    auto after = apply(before, edit);
    if (!after) FAIL(to_text(after.error()));
    return *after;
}

engine::Error refused(const Project& before, const Edit& edit) {
    const auto after = apply(before, edit);
    REQUIRE_FALSE(after.has_value());
    return after.error();
}

const Project& full() {
    static const Project project = model_tests::full_project();
    return project;
}

const Frame& counter(const Project& project) { return project.frames.front(); }

}  // namespace

// ---- put, rename, remove ------------------------------------------------------------------------

TEST_CASE("putting a new name adds, putting a known one replaces", "[model][edit]") {
    Dimension depth{.name = "depth", .formula = "18 in"};
    const Project one = edited({}, PutDimension{depth});
    depth.formula = "20 in";
    const Project two = edited(one, PutDimension{depth});
    REQUIRE(two.dimensions.size() == 1);
    CHECK(two.dimensions[0].formula == "20 in");
}

TEST_CASE("renaming onto a taken name is refused", "[model][edit]") {
    const auto error = refused(full(), PutPlane{"counter", {"right", Axis::x, "0"}, "left"});
    CHECK(error.code == ErrorCode::duplicate_name);
    CHECK(error.where == "frame counter, plane right");
}

TEST_CASE("replacing what is not there is refused by name", "[model][edit]") {
    const auto error = refused(full(), PutPlane{"counter", {"mid", Axis::x, "0"}, "middle"});
    CHECK(error.code == ErrorCode::unknown_name);
    CHECK(error.message == "there is no plane \"middle\"");
}

TEST_CASE("a thing in a frame that is not there is refused", "[model][edit]") {
    CHECK(refused(full(), RemovePlane{"shelf", "left"}).message == "there is no frame \"shelf\"");
}

TEST_CASE("empty names and names with stray spaces are refused", "[model][edit]") {
    CHECK(refused(full(), PutPlane{"counter", {"", Axis::x, "0"}}).code ==
          ErrorCode::invalid_value);
    CHECK(refused(full(), PutPlane{"counter", {" mid", Axis::x, "0"}}).code ==
          ErrorCode::invalid_value);
    CHECK(refused(full(), PutPlane{"counter", {"a\nb", Axis::x, "0"}}).code ==
          ErrorCode::invalid_value);
}

TEST_CASE("a dimension's name must be usable in a formula", "[model][edit]") {
    const auto error = refused({}, PutDimension{{.name = "1st", .formula = "1 in"}});
    CHECK_THAT(error.message, Contains("begin with a letter"));
    CHECK_FALSE(apply({}, PutDimension{{.name = "min", .formula = "1 in"}}).has_value());
}

TEST_CASE("renaming a dimension carries the formulas that use it", "[model][edit]") {
    Dimension width = full().dimensions[0];
    width.name = "clear width";
    const Project after = edited(full(), PutDimension{width, "width"});
    CHECK(after.dimensions[0].most == "width max");  // another name, though it begins alike
    CHECK(counter(after).planes[1].position == "clear width");
    CHECK(counter(after).planes[3].position == "clear width / 2");
}

TEST_CASE("renaming a stock carries the members and diagonals made of it", "[model][edit]") {
    Stock stock = full().stock[0];
    stock.name = "inch angle";
    const Frame after = counter(edited(full(), PutStock{stock, "angle"}));
    CHECK(after.members[0].stock == "inch angle");
    CHECK(after.diagonals[0].stock == "inch angle");
}

TEST_CASE("renaming a plane carries members, bays and diagonals on it", "[model][edit]") {
    const Frame after =
        counter(edited(full(), PutPlane{"counter", {"port", Axis::x, "0"}, "left"}));
    CHECK(after.members[0].on[0] == "port");
    CHECK(after.members[1].from == "port");
    CHECK(after.bays[0].x[0] == "port");
    CHECK(after.diagonals[0].from[0] == "port");
}

TEST_CASE("renaming a bay carries its panels and loads", "[model][edit]") {
    Bay bay = counter(full()).bays[0];
    bay.name = "under";
    const Frame after = counter(edited(full(), PutBay{"counter", bay, "lower"}));
    CHECK(after.panels[0].bay == "under");
    CHECK(std::get<std::string>(after.loads[0].where) == "under");
}

TEST_CASE("renaming a member carries the joints it is in", "[model][edit]") {
    Member member = counter(full()).members[0];
    member.name = "front post";
    const Frame after = counter(edited(full(), PutMember{"counter", member, "post"}));
    CHECK(after.joints[0].members[0] == "front post");
}

TEST_CASE("what is in use is not removed, and the user is named", "[model][edit]") {
    CHECK_THAT(refused(full(), RemoveDimension{"width"}).message,
               Contains("frame counter, plane right and 1 more"));
    CHECK_THAT(refused(full(), RemoveStock{"angle"}).message,
               Contains("frame counter, member post and 3 more"));
    CHECK_THAT(refused(full(), RemovePlane{"counter", "left"}).message,
               Contains("bay lower and 3 more"));
    CHECK_THAT(refused(full(), RemoveBay{"counter", "lower"}).message,
               Contains("panel side and 1 more"));
}

TEST_CASE("a dimension that only its own formula names can be removed", "[model][edit]") {
    const Project project{.dimensions = {{.name = "a", .formula = "a + 1 in"}}};
    CHECK(edited(project, RemoveDimension{"a"}).dimensions.empty());
}

TEST_CASE("removing a member takes its joint overrides along", "[model][edit]") {
    CHECK(counter(edited(full(), RemoveMember{"counter", "rail"})).joints.empty());
}

TEST_CASE("removing what is not there is refused", "[model][edit]") {
    CHECK(refused(full(), RemoveMember{"counter", "x"}).code == ErrorCode::unknown_name);
    CHECK(refused(full(), RemoveObstacle{"x"}).code == ErrorCode::unknown_name);
    CHECK(refused(full(), RemoveFrame{"x"}).code == ErrorCode::unknown_name);
    CHECK(refused(full(), RemoveJoint{"counter", {"post", "x"}}).code == ErrorCode::unknown_name);
}

// ---- references, formulas, numbers --------------------------------------------------------------

TEST_CASE("a member on a plane that is not there is refused", "[model][edit]") {
    Member member = counter(full()).members[0];
    member.on[1] = "centre";
    const auto error = refused(full(), PutMember{"counter", member});
    CHECK(error.code == ErrorCode::unknown_name);
    CHECK(error.where == "frame counter, member post");
    CHECK_THAT(error.message, Contains("no plane \"centre\""));
}

TEST_CASE("a member that was broken before may still be changed otherwise", "[model][edit]") {
    Project broken = full();
    broken.frames[0].members[0].on[1] = "centre";
    Member member = broken.frames[0].members[0];
    member.turned = false;
    CHECK_FALSE(counter(edited(broken, PutMember{"counter", member})).members[0].turned);
    member.from = "floor";
    CHECK(refused(broken, PutMember{"counter", member}).code == ErrorCode::unknown_name);
}

TEST_CASE("a formula that cannot be read is refused with its column", "[model][edit]") {
    const auto error = refused(full(), SetFormula{"width", "36 in +"});
    CHECK(error.code == ErrorCode::invalid_text);
    CHECK_THAT(error.where, Contains("dimension width") && Contains("column"));
    CHECK(refused(full(), SetFormula{"width", "(height + 3"}).code == ErrorCode::invalid_text);
    CHECK(refused(full(), SetPlanePosition{"counter", "top", ""}).code == ErrorCode::invalid_text);
}

TEST_CASE("a formula with names that are not there yet is let in", "[model][edit]") {
    const Project after = edited(full(), SetFormula{"width", "van width - 2 in"});
    CHECK(after.dimensions[0].formula == "van width - 2 in");
}

TEST_CASE("formulas of angles are read as angles", "[model][edit]") {
    CHECK(edited(full(), SetFormula{"lean", "7.5"}).dimensions[2].formula == "7.5");
}

TEST_CASE("numbers that are none, and text that is no UTF-8, are refused", "[model][edit]") {
    Load load{.name = "x", .mass_kg = std::numeric_limits<double>::quiet_NaN(), .where = "lower"};
    CHECK(refused(full(), PutLoad{"counter", load}).code == ErrorCode::out_of_range);
    load.mass_kg = 1.0;
    load.note = "\xff";
    CHECK(refused(full(), PutLoad{"counter", load}).code == ErrorCode::invalid_text);
    Shop shop;
    shop.pitch = 1.0;
    CHECK(refused(full(), SetShop{shop}).code == ErrorCode::out_of_range);
    CHECK(refused(full(), SetShown{{.denominator = 12}}).where == "style of lengths, denominator");
}

TEST_CASE("a frame put whole is checked inside", "[model][edit]") {
    Frame frame = counter(full());
    frame.name = "second";
    CHECK(edited(full(), PutFrame{frame}).frames.size() == 2);
    frame.planes.push_back(frame.planes[0]);
    CHECK(refused(full(), PutFrame{frame}).where == "frame second, plane left");
    frame.planes.clear();
    CHECK(refused(full(), PutFrame{frame}).code == ErrorCode::unknown_name);
}

TEST_CASE("a diagonal may not be called as a member is", "[model][edit]") {
    Diagonal diagonal = counter(full()).diagonals[0];
    diagonal.name = "post";
    CHECK(refused(full(), PutDiagonal{"counter", diagonal}).code == ErrorCode::duplicate_name);
}

// ---- the rest -----------------------------------------------------------------------------------

TEST_CASE("a joint is the same whichever member comes first", "[model][edit]") {
    const Project after =
        edited(full(), PutJoint{"counter", {.members = {"rail", "post"}, .count = 2}});
    REQUIRE(counter(after).joints.size() == 1);
    CHECK(counter(after).joints[0].count == 2);
    CHECK(counter(edited(after, RemoveJoint{"counter", {"post", "rail"}})).joints.empty());
    CHECK_FALSE(apply(full(), PutJoint{"counter", {.members = {"rail", "rail"}}}).has_value());
}

TEST_CASE("stock is set for all members or for those named", "[model][edit]") {
    const Project two =
        edited(full(), PutStock{{.name = "flat", .section = "flat 1 x 1/8", .alloy = "6063-T52"}});
    const Frame all = counter(edited(two, SetMemberStock{"counter", {}, "flat"}));
    CHECK(all.members[0].stock == "flat");
    CHECK(all.members[1].stock == "flat");
    const Frame one = counter(edited(two, SetMemberStock{"counter", {"rail"}, "flat"}));
    CHECK(one.members[0].stock == "angle");
    CHECK(one.members[1].stock == "flat");
    CHECK(refused(two, SetMemberStock{"counter", {"x"}, "flat"}).code == ErrorCode::unknown_name);
    CHECK(refused(two, SetMemberStock{"counter", {}, "oak"}).code == ErrorCode::unknown_name);
}

TEST_CASE("quarter turns wrap round", "[model][edit]") {
    CHECK(counter(edited(full(), PlaceFrame{"counter", {"0", "0", "0"}, -1})).quarter_turns == 3);
    CHECK(counter(edited(full(), PlaceFrame{"counter", {"0", "0", "0"}, 6})).quarter_turns == 2);
}

TEST_CASE("only a plain dimension that says nothing but a frame's place takes its new place",
          "[model][edit]") {
    Project project = full();
    project.dimensions.push_back({.name = "from wall", .formula = "3 in"});
    project.frames.front().origin = {"from wall", "0", "0"};
    const auto named = [](const Project& in) { return in.dimensions.back().formula; };
    Project placed = edited(project, PlaceFrame{"counter", {"5 in", "0", "0"}});
    CHECK(counter(placed).origin[0] == "from wall");
    CHECK(named(placed) == "5 in");
    // The new place along Y stands on it.
    placed = edited(project, PlaceFrame{"counter", {"5 in", "from wall + 1 in", "0"}});
    CHECK(counter(placed).origin[0] == "5 in");
    CHECK(named(placed) == "3 in");
    // A formula is more than a place.
    project.dimensions.back().formula = project.dimensions.front().name + " + 1 in";
    placed = edited(project, PlaceFrame{"counter", {"5 in", "0", "0"}});
    CHECK(counter(placed).origin[0] == "5 in");
    CHECK(named(placed) == project.dimensions.back().formula);
}

TEST_CASE("a dimension that says two coordinates of a frame's place takes but one of the new ones",
          "[model][edit]") {
    Project project = full();
    project.dimensions.push_back({.name = "inset", .formula = "3 in"});
    project.frames.front().origin = {"inset", "inset", "0"};
    const Project placed = edited(project, PlaceFrame{"counter", {"10 in", "20 in", "0"}});
    CHECK(counter(placed).origin == Place{"inset", "20 in", "0"});
    CHECK(placed.dimensions.back().formula == "10 in");
}

TEST_CASE("a formula that planes are measured from stays when the frame is put elsewhere",
          "[model][edit]") {
    Project project = full();
    const std::string formula = project.dimensions.front().name + " / 2";
    project.dimensions.push_back({.name = "aisle", .formula = formula});
    Frame& frame = project.frames.front();
    frame.origin = {"aisle", "0", "0"};
    frame.quarter_turns = 0;
    frame.planes.push_back({.name = "step", .axis = Axis::x, .position = "40 in - aisle"});
    const Project placed = edited(project, PlaceFrame{"counter", {"12 in", "0", "0"}});
    CHECK(counter(placed).origin[0] == "aisle 2");
    CHECK(counter(placed).planes.back().position == "40 in - aisle 2");
    CHECK(placed.dimensions[placed.dimensions.size() - 2].formula == formula);
    CHECK(placed.dimensions.back().formula == "12 in");
}

TEST_CASE("showing lengths in another unit changes none", "[model][edit]") {
    Project project = full();
    project.shown = {};
    project.dimensions[0].formula = "36 1/2";
    project.dimensions[0].least = "-2";
    const Project after =
        edited(project, SetShown{{.form = engine::TapeForm::millimetre, .decimals = 1}});
    CHECK(after.dimensions[0].formula == "36 1/2 in");
    CHECK(after.dimensions[0].most == "width max");
    CHECK(after.dimensions[2].formula == "5");  // an angle
    CHECK(counter(after).planes[0].position == "0");
    CHECK(counter(after).planes[5].position == "30 in");
    const auto least = engine::read_length(*after.dimensions[0].least, engine::LengthUnit::metre);
    REQUIRE(least);
    CHECK(least->nm() == -2 * engine::Length::nm_per_inch);
}

TEST_CASE("a purchase is noted once, and only one that is noted is taken back", "[model][edit]") {
    const Project noted = edited(full(), NotePurchase{7});
    CHECK(noted.purchases == std::vector{1, 2, 7});
    CHECK(edited(noted, TakePurchaseBack{2}).purchases == std::vector{1, 7});
    CHECK(refused(noted, NotePurchase{7}).code == ErrorCode::invalid_value);
    const auto error = refused(noted, TakePurchaseBack{3});
    CHECK(error.code == ErrorCode::unknown_name);
    CHECK(error.where == "purchase 3");
    for (const int number : {0, -1, 1'000'001})
        CHECK(refused(noted, NotePurchase{number}).code == ErrorCode::out_of_range);
}

TEST_CASE("labels say what was done in plain words", "[model][edit]") {
    CHECK(label_of(SetFormula{"depth", "1 in"}) == "Change depth");
    CHECK(label_of(PutMember{"counter", {.name = "mid post"}}) == "Add member mid post");
    CHECK(label_of(PutMember{"counter", {.name = "mid post"}, "mid post"}) ==
          "Change member mid post");
    CHECK(label_of(PutMember{"counter", {.name = "post"}, "mid post"}) ==
          "Rename member mid post to post");
    CHECK(label_of(SetMemberStock{"counter", {}, "flat"}) == "Make all of counter of flat");
}

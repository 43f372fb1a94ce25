// Copies of frames that are stepped over an obstacle, and of frames whose planes are called after
// sides that they do not lie across.
#include "engine/measure/formula.h"
#include "model/project/edit.h"
#include "model/project/references.h"
#include "model/project/walk_texts.h"

#include "tests/model/project/laid_out.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

using namespace model;
using namespace model_tests;

namespace {

const Frame& copied(const Project& project) { return project.frames.back(); }

// Where a plane of the frame lies, in inches from its origin.
double place(const Project& project, std::size_t frame, const std::string& plane) {
    const auto& planes = project.frames[frame].planes;
    const auto found = std::ranges::find(planes, plane, &Plane::name);
    if (found == planes.end()) FAIL("there is no plane " + plane);
    const auto index = static_cast<std::size_t>(found - planes.begin());
    const auto position = resolved(project).frames[frame].planes[index].position;
    if (!position) FAIL("it has no place: " + plane);
    return static_cast<double>(*position) / static_cast<double>(Length::nm_per_inch);
}

// The box over a wheel well at its left that runs along it.
Project stepped_box() {
    const BoxObstacle well{{"-1", "-40", "-1"}, {"9", "90", "8"}};
    const Project before =
        edited(started_box(), PutObstacle{{.name = "left wheel well", .shape = well}, ""});
    return edited(before, StepOver{.frame = "box", .obstacle = "left wheel well"});
}

// The dimensions of `after` that `before` lacks and no formula stands on.
std::vector<std::string> orphans(const Project& before, const Project& after) {
    std::set<std::string> used;
    walk_texts(after, [&](const Meaning& meaning, const std::string& text, const Trail&) {
        if (meaning.role != Role::formula) return;
        for (auto& name : engine::names_in(text)) used.insert(std::move(name));
    });
    std::vector<std::string> names;
    for (const Dimension& it : after.dimensions) {
        const bool is_new = std::ranges::count(before.dimensions, it.name, &Dimension::name) == 0;
        if (is_new && !used.contains(it.name)) names.push_back(it.name);
    }
    return names;
}

CopyFrame copy_to(const Place& origin) {
    return {.frame = "box", .copy = "other", .origin = origin};
}

}  // namespace

TEST_CASE("in a mirrored copy all that stands on a plane of a step goes by its new side",
          "[model][edit][copy]") {
    Project before = stepped_box();
    CopyFrame copy = copy_to({"100", "0", "0"});
    copy.is_mirrored = true;
    const Project after = edited(before, copy);
    const Frame& other = copied(after);
    // The wheel well from which it is measured is the left one as before.
    CHECK(std::ranges::count(other.planes, "left wheel well top", &Plane::name) == 1);
    CHECK(missing_references(after, &other, other).empty());
    CHECK(faults(resolved(after)) == faults(resolved(before)));
    CHECK(place(after, 1, "left wheel well left") ==
          Approx(36 - place(before, 0, "left wheel well right")));
}

TEST_CASE("a mirrored copy follows the obstacle that it is measured from, and no other",
          "[model][edit][copy]") {
    const BoxObstacle well{{"200", "-40", "-1"}, {"210", "90", "8"}};
    Project before =
        edited(stepped_box(), PutObstacle{{.name = "right wheel well", .shape = well}, ""});
    CopyFrame copy = copy_to({"100", "0", "0"});
    copy.is_mirrored = true;
    before = edited(before, copy);
    const double top = place(before, 0, "left wheel well top");
    const auto with_own_clearance = [&](std::size_t obstacle) {
        Obstacle own = before.room[obstacle];
        own.clearance = "2 in";
        return edited(before, PutObstacle{own, own.name});
    };
    const Project left = with_own_clearance(0);
    CHECK(place(left, 0, "left wheel well top") == Approx(top + 1.75));
    CHECK(place(left, 1, "left wheel well top") == Approx(top + 1.75));
    CHECK(place(left, 1, "left wheel well left") ==
          Approx(36 - place(left, 0, "left wheel well right")));
    const Project right = with_own_clearance(1);
    CHECK(place(right, 0, "left wheel well top") == Approx(top));
    CHECK(place(right, 1, "left wheel well top") == Approx(top));
}

TEST_CASE("in a mirrored copy no two planes come to have one name", "[model][edit][copy]") {
    const Project before =
        edited(stepped_box(), PutPlane{"box", {"right wheel well top", Axis::z, "20"}, ""});
    CopyFrame copy = copy_to({"100", "0", "0"});
    copy.is_mirrored = true;
    const Project after = edited(before, copy);
    CHECK(std::ranges::count(copied(after).planes, "left wheel well top", &Plane::name) == 1);
    CHECK(std::ranges::count(copied(after).planes, "left wheel well top 2", &Plane::name) == 1);
}

TEST_CASE("in a mirrored copy bays and leaning bars on planes called after a side stay on them",
          "[model][edit][copy]") {
    Project before =
        edited(started_box(1, 0), PutPlane{"box", {"left shelf", Axis::z, "shelf 1"}, "shelf 1"});
    Leaning strut{.name = "strut", .stock = "angle", .face = "front"};
    strut.from = {"left", "left shelf"};
    strut.to = {"right", "top"};
    before = edited(before, PutLeaning{"box", strut, ""});
    Diagonal brace{.name = "brace", .stock = "angle", .face = "left"};
    brace.from = {"front", "bottom"};
    brace.to = {"back", "left shelf"};
    before = edited(before, PutDiagonal{"box", brace, ""});
    CopyFrame copy = copy_to({"100", "0", "0"});
    copy.is_mirrored = true;
    const Project after = edited(before, copy);
    const Frame& other = copied(after);
    CHECK(missing_references(after, &other, other).empty());
    CHECK(other.bays[0].z == std::array<std::string, 2>{"bottom", "right shelf"});
    CHECK(other.leaning[0].from == std::array<std::string, 2>{"right", "right shelf"});
    CHECK(other.diagonals[0].to == std::array<std::string, 2>{"back", "right shelf"});
}

TEST_CASE("a copy of a stepped frame has its shape wherever it stands", "[model][edit][copy]") {
    // The last one is what the window proposes: beside the original along two axes.
    const Place origin =
        GENERATE(Place{"100", "0", "0"}, Place{"0", "40", "0"}, Place{"-7 in", "12", "3 in"},
                 Place{"box origin x", "59 in", "box origin z"});
    const bool is_mirrored = GENERATE(false, true);
    const bool has_own_dimensions = GENERATE(false, true);
    CAPTURE(origin[0], origin[1], is_mirrored, has_own_dimensions);
    const Project before = stepped_box();
    CopyFrame copy = copy_to(origin);
    copy.is_mirrored = is_mirrored;
    copy.has_own_dimensions = has_own_dimensions;
    const Project after = edited(before, copy);
    CHECK(orphans(before, after).empty());
    CHECK(faults(resolved(after)) == faults(resolved(before)));
    const auto& planes = before.frames[0].planes;
    for (std::size_t i = 0; i < planes.size(); ++i) {
        const double was = place(before, 0, planes[i].name);
        const bool is_turned = is_mirrored && planes[i].axis == Axis::x;
        CHECK(place(after, 1, copied(after).planes[i].name) == Approx(is_turned ? 36 - was : was));
    }
}

TEST_CASE(
    "a copy beside the same obstacle keeps clear of it when it is moved, and its original "
    "does not move it",
    "[model][edit][copy]") {
    const bool has_own_dimensions = GENERATE(false, true);
    CAPTURE(has_own_dimensions);
    CopyFrame copy = copy_to({"0", "40", "0"});
    copy.has_own_dimensions = has_own_dimensions;
    const Project before = edited(stepped_box(), copy);
    const double step = place(before, 1, "left wheel well right");
    const Project moved = edited(before, PlaceFrame{"other", {"1 in", "40", "0"}, 0});
    CHECK(place(moved, 1, "left wheel well right") == Approx(step - 1));
    CHECK(place(moved, 0, "left wheel well right") == Approx(step));
    const Project without = edited(before, PlaceFrame{"box", {"-1 in", "0", "0"}, 0});
    CHECK(place(without, 1, "left wheel well right") == Approx(step));
    CHECK(place(without, 0, "left wheel well right") == Approx(step + 1));
}

TEST_CASE("what says where a copy stands is called after it", "[model][edit][copy]") {
    const Project before = stepped_box();
    const Project after = edited(before, copy_to({"60", "40", "0"}));
    CHECK(copied(after).origin[2] == "other origin z");
    const auto begins_with_box = [](const Dimension& it) { return it.name.starts_with("box "); };
    CHECK(std::ranges::count_if(after.dimensions, begins_with_box) ==
          std::ranges::count_if(before.dimensions, begins_with_box));
}

TEST_CASE("a copy that stands elsewhere is not changed by moving its original",
          "[model][edit][copy]") {
    const Project before = edited(stepped_box(), copy_to({"100", "0", "0"}));
    const double step = place(before, 1, "left wheel well right");
    const Project after = edited(before, SetFormula{"box origin x", "2 in"});
    CHECK(place(after, 0, "left wheel well right") == Approx(step - 2));
    CHECK(place(after, 1, "left wheel well right") == Approx(step));
}

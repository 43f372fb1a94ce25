// Copies of frames as they are or of the opposite hand.
#include "model/project/edit.h"
#include "model/resolve/finding.h"

#include "tests/model/project/laid_out.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Matchers::Contains;
using namespace model;
using namespace model_tests;

namespace {

const Plane& plane(const Project& project, const std::string& name, std::size_t frame) {
    const auto& planes = project.frames[frame].planes;
    const auto found = std::ranges::find(planes, name, &Plane::name);
    if (found == planes.end()) FAIL("there is no plane " + name);
    return *found;
}

}  // namespace

TEST_CASE("a copied frame resolves like its original", "[model][edit][copy]") {
    const int shelves = GENERATE(0, 2);
    const bool has_own_dimensions = GENERATE(false, true);
    CAPTURE(shelves, has_own_dimensions);
    const Project before = started_box(shelves, 1);
    CopyFrame copy{.frame = "box", .copy = "locker", .origin = {"60", "0", "0"}};
    copy.has_own_dimensions = has_own_dimensions;
    const auto both = resolved(edited(before, copy));
    CHECK(faults(both) == faults(resolved(before)));
    CHECK(both.frames[0].piece_count == both.frames[1].piece_count);
    CHECK(hands_by_mark(both, 0) == hands_by_mark(both, 1));
}

TEST_CASE("a copy that shares dimensions follows them, one with its own does not",
          "[model][edit][copy]") {
    CopyFrame copy{.frame = "box", .copy = "locker", .origin = {"60", "0", "0"}};
    const Project sharing = edited(started_box(), copy);
    CHECK(sharing.dimensions.size() == started_box().dimensions.size());
    CHECK(plane(sharing, "right", 1).position == "width");
    copy.has_own_dimensions = true;
    const Project apart = edited(started_box(), copy);
    CHECK(plane(apart, "right", 1).position == "locker width");
    CHECK(apart.dimensions.back().name == "locker height");
    CHECK(apart.dimensions.back().formula == "30");
}

TEST_CASE(
    "dimensions that others of the frame's are worked out from become its own, those of the "
    "room do not",
    "[model][edit][copy]") {
    Project before = started_box();
    before = edited(before, PutDimension{{.name = "module", .formula = "12 in"}, ""});
    before = edited(before, PutDimension{{.name = "sill height", .formula = "2 in"}, ""});
    before = edited(before, SetFormula{"width", "3 * module"});
    before = edited(before, SetFormula{"height", "30 in + sill height"});
    const BoxObstacle box{{"0", "0", "0"}, {"4", "4", "sill height"}};
    before = edited(before, PutObstacle{{.name = "sill", .shape = box}, ""});
    const Project after =
        edited(before, CopyFrame{.frame = "box", .copy = "locker", .has_own_dimensions = true});
    const auto formula_of = [&](const std::string& name) {
        const auto found = std::ranges::find(after.dimensions, name, &Dimension::name);
        return found == after.dimensions.end() ? Formula("none") : found->formula;
    };
    CHECK(formula_of("locker width") == "3 * locker module");
    CHECK(formula_of("locker module") == "12 in");
    CHECK(formula_of("locker height") == "30 in + sill height");
    CHECK(formula_of("locker sill height") == "none");
}

TEST_CASE(
    "a mirrored copy has as many pieces, each of the opposite hand, and no finding of its own",
    "[model][edit][copy]") {
    const int shelves = GENERATE(0, 2);
    const int dividers = GENERATE(0, 1, 2);
    CAPTURE(shelves, dividers);
    const Project before = started_box(shelves, dividers);
    CopyFrame copy{.frame = "box", .copy = "other hand", .origin = {"60", "0", "0"}};
    copy.is_mirrored = true;
    const auto both = resolved(edited(before, copy));
    CHECK(faults(both) == faults(resolved(before)));
    CHECK(both.frames[0].piece_count == both.frames[1].piece_count);
    auto hands = hands_by_mark(both, 0);
    for (auto& [mark, count] : hands) std::swap(count[0], count[1]);
    CHECK(hands == hands_by_mark(both, 1));
}

TEST_CASE("mirrored twice, a frame is laid out as it was", "[model][edit][copy]") {
    CopyFrame copy{.frame = "box", .copy = "once", .is_mirrored = true};
    const Project once = edited(started_box(1, 1), copy);
    copy.frame = "once";
    copy.copy = "twice";
    const Project twice = edited(once, copy);
    Frame again = twice.frames[2];
    again.name = "box";
    CHECK(again.members == twice.frames[0].members);
    CHECK(again.bays == twice.frames[0].bays);
    CHECK(resolved(twice).frames[2].planes == resolved(twice).frames[0].planes);
}

TEST_CASE("a copy takes no name that is taken, and cut-outs have no opposite hand",
          "[model][edit][copy]") {
    CHECK(refused(started_box(), CopyFrame{.frame = "box", .copy = "box"}).where == "frame box");
    Panel panel{.name = "door", .bay = "inside", .material = "plywood", .thickness = "1/2 in"};
    panel.cut_outs = {{"grip", {"1", "1"}, {"3", "3"}, false}};
    const Project before = edited(started_box(), PutPanel{"box", panel, ""});
    const auto error =
        refused(before, CopyFrame{.frame = "box", .copy = "other", .is_mirrored = true});
    CHECK(error.where == "frame box, panel door");
    CHECK_THAT(error.message, Contains("take them out first"));
}

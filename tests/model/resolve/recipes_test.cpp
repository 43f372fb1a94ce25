// Each way in which two members meet, at one corner. All bar is 1 x 1 x 1/8 in with an end gap of
// 1/32 in unless said otherwise; the figures were worked out by hand from the design's rules.
#include "model/project/edit.h"
#include "model/resolve/recipe.h"

#include "tests/model/resolve/resolve_support.h"

using model::Axis;
using model::PieceKind;
using model::Sense;
using tests::FrameBuilder;
using tests::inches;
using tests::inches_64;

namespace {

constexpr auto plus = Sense::plus;
constexpr auto minus = Sense::minus;

// A post and an x-rail that end at one corner on the front.
model::Project corner(const std::string& recipe) {
    FrameBuilder builder("corner");
    builder.member("main", Axis::z, {0, 0}, 0, inches(20), {plus, plus});
    builder.member("main", Axis::x, {0, inches(20)}, 0, inches(30), {plus, minus});
    auto project = tests::project_of(builder);
    project.shop.recipe = recipe;
    return project;
}

// A post of square tube and a rail of it that butts its side in mid-span.
model::Project tubes(const std::string& recipe) {
    FrameBuilder builder("tubes");
    builder.member("main", Axis::z, {0, 0}, 0, inches(20), {plus, plus});
    builder.member("main", Axis::x, {0, inches(10)}, 0, inches(30), {plus, plus});
    auto project = tests::project_of(builder);
    project.stock[0].section = "tube 1 x 1 x 1/8";
    project.stock.push_back(tests::stock_of("cleats", "angle 1 x 1 x 1/8", "6063-T52"));
    project.shop.recipe = recipe;
    return project;
}

std::vector<model::Piece> parts(const model::Resolved& resolved, PieceKind kind) {
    std::vector<model::Piece> found;
    std::ranges::copy_if(resolved.pieces, std::back_inserter(found),
                         [&](const model::Piece& piece) { return piece.kind == kind; });
    return found;
}

std::size_t fasteners_through(const model::Resolved& resolved, PieceKind kind) {
    return static_cast<std::size_t>(
        std::ranges::count_if(resolved.fasteners, [&](const model::Fastener& fastener) {
            return std::any_of(fastener.stack.begin(),
                               fastener.stack.begin() + fastener.stack_count,
                               [&](const model::StackPlate& plate) {
                                   return resolved.pieces[plate.piece].kind == kind;
                               });
        }));
}

}  // namespace

TEST_CASE("every recipe has a name and a sentence, and the first is the staggered lap",
          "[model][recipe]") {
    CHECK(model::recipes().front().name == "staggered lap");
    for (const auto& recipe : model::recipes()) {
        CHECK(model::find_recipe(recipe.name).has_value() == recipe.is_chosen);
        CHECK_FALSE(recipe.what.empty());
    }
    CHECK(model::find_recipe("") == std::uint8_t{0});
    CHECK_FALSE(model::find_recipe("no such way"));
}

TEST_CASE("flush: the rail butts the post's toe in one layer and a gusset laps both",
          "[model][recipe]") {
    const auto project = corner("flush");
    const auto resolved = tests::resolved(project);
    const auto rail = tests::pieces_of(project, resolved, "m2")[0];
    CHECK(rail.extents.lo[1] == 0);              // not set in
    CHECK(rail.extents.lo[0] == inches_64(66));  // 1 in of leg, and the end gap
    const auto gussets = parts(resolved, PieceKind::gusset);
    REQUIRE(gussets.size() == 1);
    const auto& box = gussets[0].extents;
    CHECK(box.lo[1] == inches_64(8));  // on the inside of both legs, as thick as they are
    CHECK(box.hi[1] == inches_64(16));
    CHECK(box.lo[0] == inches_64(10));   // clear of the post's side leg
    CHECK(box.hi[0] == inches_64(130));  // a leg's width on the rail
    CHECK(box.hi[2] == inches(20) - inches_64(10));
    CHECK(box.lo[2] == inches(18));
    // Its free corner is cut off from toe to toe.
    const auto& outline = resolved.outlines[gussets[0].plates[0].outline];
    CHECK(outline.corners.size() == 5);
    CHECK(fasteners_through(resolved, PieceKind::gusset) == 4);
    CHECK(tests::count_of(resolved, "loose_end") == 2);  // only the two far ends
    CHECK(tests::count_of(resolved, "interference") == 0);
}

TEST_CASE("mitre: both ends are cut at 45 degrees with half the gap each", "[model][recipe]") {
    const auto project = corner("mitre");
    const auto resolved = tests::resolved(project);
    const auto post = tests::pieces_of(project, resolved, "m1")[0];
    const auto rail = tests::pieces_of(project, resolved, "m2")[0];
    CHECK(post.length == inches(20) - inches_64(1));
    CHECK(rail.length == inches(30) - inches_64(1));
    const auto slopes_once = [](const model::PieceEnd& end) {
        return std::abs(end.slope[0]) + std::abs(end.slope[1]) == 1.0;
    };
    CHECK(slopes_once(post.ends[1]));
    CHECK_FALSE(slopes_once(post.ends[0]));
    CHECK(slopes_once(rail.ends[0]));
    CHECK(parts(resolved, PieceKind::gusset).size() == 1);
    CHECK(fasteners_through(resolved, PieceKind::gusset) == 4);
    CHECK(tests::count_of(resolved, "interference") == 0);
}

TEST_CASE("an end is mitred once: a third member laps", "[model][recipe]") {
    FrameBuilder builder("corner of three");
    builder.member("main", Axis::z, {0, 0}, 0, inches(20), {plus, plus});
    builder.member("main", Axis::x, {0, inches(20)}, 0, inches(30), {plus, minus});
    builder.member("main", Axis::y, {0, inches(20)}, 0, inches(12), {plus, minus});
    auto project = tests::project_of(builder);
    project.shop.recipe = "mitre";
    const auto resolved = tests::resolved(project);
    CHECK(parts(resolved, PieceKind::gusset).size() == 1);
    REQUIRE(tests::first_of(resolved, "recipe_not_here") != nullptr);
    CHECK(tests::count_of(resolved, "interference") == 0);
    const auto third = tests::pieces_of(project, resolved, "m3")[0];
    for (const auto& end : third.ends) {
        CHECK((end == model::PieceEnd{}));
    }
}

TEST_CASE("coped lap: only the leg in the way is notched, to the root", "[model][recipe]") {
    model::Project project;
    project.stock = {tests::stock_of("main", "angle 1 x 1 x 1/8", "6063-T52")};
    const auto started = model::apply(
        project, model::StartSteppedFrame{
                     "step", "main", "36 in", "18 in", "30 in", "10 in", "8 in", {}, {}});
    REQUIRE(started);
    const auto lapped = tests::resolved(*started);
    auto coped_project = *started;
    coped_project.shop.recipe = "coped lap";
    const auto coped = tests::resolved(coped_project);
    const auto before = tests::pieces_of(*started, lapped, "rail well edge")[0];
    const auto after = tests::pieces_of(*started, coped, "rail well edge")[0];
    // A leg's thickness and the gap at both ends.
    CHECK(after.length == before.length + 2 * inches_64(10));
    CHECK(after.ends[0].wall_back[0] + after.ends[0].wall_back[1] == inches_64(10));
    CHECK(after.ends[1].wall_back[0] + after.ends[1].wall_back[1] == inches_64(10));
    CHECK(tests::count_of(coped, "interference") == 0);
}

TEST_CASE("corner cleat: a tube butts a tube, and a short angle is riveted to both from outside",
          "[model][recipe]") {
    const auto project = tubes("corner cleat");
    const auto resolved = tests::resolved(project);
    const auto rail = tests::pieces_of(project, resolved, "m2")[0];
    CHECK(rail.extents.lo[0] == inches_64(66));  // before the post's side
    const auto cleats = parts(resolved, PieceKind::cleat);
    REQUIRE(cleats.size() == 1);
    CHECK(project.stock[cleats[0].stock].name == "cleats");
    CHECK(fasteners_through(resolved, PieceKind::cleat) == 4);
    for (const auto& fastener : resolved.fasteners) {
        const auto& first = resolved.pieces[fastener.stack[0].piece];
        CHECK(first.kind == PieceKind::cleat);  // the head's side
    }
    CHECK(tests::count_of(resolved, "recipe_not_here") == 0);
    CHECK(tests::count_of(resolved, "interference") == 0);
}

TEST_CASE("strap: a piece of flat bar laps both tubes on the outside", "[model][recipe]") {
    auto project = tubes("strap");
    project.stock.push_back(tests::stock_of("straps", "flat 1 x 1/8", "6063-T52"));
    const auto resolved = tests::resolved(project);
    const auto straps = parts(resolved, PieceKind::strap);
    REQUIRE(straps.size() == 1);
    CHECK(project.stock[straps[0].stock].name == "straps");
    CHECK(straps[0].extents.hi[1] == 0);  // on the front face
    CHECK(straps[0].extents.lo[1] == -inches_64(8));
    CHECK(fasteners_through(resolved, PieceKind::strap) == 4);
    CHECK(tests::count_of(resolved, "interference") == 0);
}

TEST_CASE("without stock to cut a part from, a finding says what to add", "[model][recipe]") {
    auto project = tubes("corner cleat");
    project.stock.pop_back();
    const auto resolved = tests::resolved(project);
    const auto* finding = tests::first_of(resolved, "recipe_has_no_room");
    REQUIRE(finding != nullptr);
    CHECK(finding->what.find("no angle among the stock") != std::string::npos);
    CHECK(finding->mend.find("add an angle") != std::string::npos);
}

TEST_CASE("where tubes would have to lap, a finding says to use a corner cleat",
          "[model][recipe]") {
    const auto resolved = tests::resolved(tubes("coped lap"));
    const auto* finding = tests::first_of(resolved, "recipe_not_here");
    REQUIRE(finding != nullptr);
    CHECK(finding->mend.find("corner cleat") != std::string::npos);
}

TEST_CASE("the joint is asked before the frame, the frame before the shop", "[model][recipe]") {
    auto project = corner("flush");
    CHECK(parts(tests::resolved(project), PieceKind::gusset).size() == 1);
    project.frames[0].recipe = "staggered lap";
    CHECK(parts(tests::resolved(project), PieceKind::gusset).empty());
    project.frames[0].joints.push_back({.members = {"m2", "m1"}, .recipe = "flush"});
    CHECK(parts(tests::resolved(project), PieceKind::gusset).size() == 1);
}

TEST_CASE("a rail of a box is flush at both its ends or at none, and a finding says why",
          "[model][recipe]") {
    auto project = tests::box_project({}, "angle 1 x 1 x 1/8", "6063-T52");
    auto& joints = project.frames[0].joints;
    joints = {{.members = {"m1", "m5"}, .recipe = "flush"}};
    const auto at_one = tests::resolved(project);
    const auto* why = tests::first_of(at_one, "recipe_not_here");
    REQUIRE(why != nullptr);
    CHECK(why->what.find("m5 lies deeper than the other, behind") != std::string::npos);
    CHECK(parts(at_one, PieceKind::gusset).empty());
    CHECK(tests::count_of(at_one, "loose_end") == 0);

    for (const char* post : {"m2", "m3", "m4"}) {
        joints.push_back({.members = {post, "m5"}, .recipe = "flush"});
    }
    const auto at_both = tests::resolved(project);
    CHECK(tests::count_of(at_both, "recipe_not_here") == 0);
    CHECK(parts(at_both, PieceKind::gusset).size() == 2);
    CHECK(tests::pieces_of(project, at_both, "m5")[0].extents.lo[1] == 0);
    CHECK(tests::count_of(at_both, "interference") == 0);
}

TEST_CASE("what finds no room for a cleat laps instead, and nothing is left loose",
          "[model][recipe]") {
    // In a box of angle no end butts a wall with room for a cleat on both.
    auto project = tests::box_project({}, "angle 1 x 1 x 1/8", "6063-T52");
    project.shop.recipe = "corner cleat";
    const auto resolved = tests::resolved(project);
    REQUIRE(tests::first_of(resolved, "recipe_has_no_room") != nullptr);
    CHECK(tests::first_of(resolved, "recipe_has_no_room")->severity == model::Severity::warning);
    CHECK(tests::count_of(resolved, "loose_end") == 0);
    CHECK(tests::count_of(resolved, "not_joined") == 0);
}

TEST_CASE("a gusset is as thick as the shop says", "[model][recipe]") {
    auto project = corner("flush");
    project.shop.gusset_thickness = "1/16 in";
    const auto gussets = parts(tests::resolved(project), PieceKind::gusset);
    REQUIRE(gussets.size() == 1);
    CHECK(gussets[0].extents.hi[1] - gussets[0].extents.lo[1] == inches_64(4));
}

// A box frame whose side leans with a wall: what of it leans, what follows, and what is refused.
#include "model/room/lean_with_wall.h"

#include "model/room/resolve_in_room.h"
#include "model/room/wall_lean.h"
#include "model/schedule/tables.h"

#include "tests/model/resolve/resolve_support.h"
#include "tests/support/frame_builder.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace model;
using Catch::Contains;
using tests::inches;

namespace {

const Catalogue& catalogue() { return tests::shipped_catalogue(); }

Project with(Project project, const Edit& edit) {
    auto next = apply(std::move(project), edit);
    if (!next) FAIL(engine::to_text(next.error()));
    return std::move(next).value();
}

// 30 x 18 x 48 in with its back 3/4 in from the left wall, which leans in by 4 1/4 in over that
// height, and stands at x = 0; y of the frame looks at the wall.
Project box(const StartBoxFrame& start) {
    Project project;
    project.stock.push_back(tests::stock_of("angle", "angle 1 x 1 x 1/8", "6063-T52"));
    project.room.push_back(
        {.name = "left wall",
         .shape = WallProfile{
             .at = "0", .from = "0", .to = "60", .offsets = {{"0", "0"}, {"48", "4 1/4"}}}});
    project = with(std::move(project), start);
    return with(std::move(project), PlaceFrame{start.frame, {"18 3/4", "6", "0"}, 1});
}

StartBoxFrame locker() {
    return {.frame = "locker",
            .stock = "angle",
            .width = "30",
            .depth = "18",
            .height = "48",
            .shelf_levels = {"16", "32"}};
}

engine::Result<std::vector<Edit>> lean(const Project& project) {
    return lean_with_wall(project, catalogue(), resolve(project, catalogue()),
                          project.frames[0].name, "left wall");
}

Project leaned(const Project& project) {
    const auto edits = lean(project);
    if (!edits) FAIL(engine::to_text(edits.error()));
    Project next = project;
    for (const auto& edit : *edits) next = with(std::move(next), edit);
    return next;
}

std::string refusal_of(const Project& project) {
    const auto edits = lean(project);
    return edits ? std::string() : engine::to_text(edits.error());
}

std::string to_mend(const Project& project) {
    std::string text;
    for (const auto& finding : resolve_in_room(project, catalogue(), {}).findings) {
        if (finding.severity == Severity::note) continue;
        text += where_text(finding) + ": " + finding.what + "\n";
    }
    return text;
}

std::vector<Nm> lengths_of_leaning(const Project& project) {
    std::vector<Nm> lengths;
    for (const auto& piece : resolve(project, catalogue()).pieces) {
        if (piece.kind == PieceKind::leaning) lengths.push_back(piece.length);
    }
    return lengths;
}

std::string formula_of(const Project& project, std::string_view dimension) {
    const auto at = std::ranges::find(project.dimensions, dimension, &Dimension::name);
    return at == project.dimensions.end() ? std::string() : at->formula;
}

}  // namespace

TEST_CASE("a box in the wall leans with it, and then nothing is to mend", "[model][room][lean]") {
    const auto project = box(locker());
    REQUIRE_THAT(to_mend(project), Contains("left wall"));
    const auto after = leaned(project);
    CHECK(to_mend(after).empty());
    CHECK(formula_of(after, "leans in") == "4 1/4");
    REQUIRE(after.frames[0].leaning.size() == 2);
    CHECK(after.frames[0].leaning[0].name == "post back left");
    CHECK(after.frames[0].leaning[0].face == "left");
    CHECK(after.frames[0].leaning[0].leg == Sense::minus);
    CHECK(after.frames[0].members.size() == project.frames[0].members.size() - 2);
}

TEST_CASE("its posts are cut at the wall's lean", "[model][room][lean]") {
    const auto after = leaned(box(locker()));
    for (const auto& piece : resolve(after, catalogue()).pieces) {
        if (piece.kind != PieceKind::leaning) continue;
        CHECK(std::abs(piece.ends[0].slope[0]) == Approx(4.25 / 48.0));
        // The height less what its ends keep from the rails, along the slope.
        const double level = 48.0 - 2.0 * (0.25 + 1.0 / 32.0);
        const double slope = 4.25 / 48.0;
        const double length = level * std::hypot(1.0, slope) + slope;
        CHECK(engine::Length::from_nm(piece.length).mm() == Approx(length * 25.4).epsilon(1e-6));
    }
}

TEST_CASE("it goes on leaning when height, shelf and lean are changed", "[model][room][lean]") {
    auto after = leaned(box(locker()));
    for (const auto& [name, formula] : std::vector<std::pair<std::string, std::string>>{
             {"height", "46"}, {"shelf 1", "18"}, {"leans in", "4 3/4"}, {"depth", "17"}}) {
        after = with(std::move(after), SetFormula{name, formula});
        CAPTURE(name);
        CHECK(to_mend(after).empty());
    }
    CHECK(lengths_of_leaning(after) != lengths_of_leaning(leaned(box(locker()))));
}

TEST_CASE("a frame that looks the other way leans on its own near side", "[model][room][lean]") {
    auto project = box(locker());
    // Its front, at y = 0, faces the wall.
    project = with(std::move(project), PlaceFrame{"locker", {"3/4", "38", "0"}, 3});
    REQUIRE_THAT(to_mend(project), Contains("left wall"));
    const auto after = leaned(project);
    CHECK(to_mend(after).empty());
    REQUIRE(after.frames[0].leaning.size() == 2);
    CHECK(after.frames[0].leaning[0].name == "post front left");
    CHECK(after.frames[0].leaning[0].leg == Sense::plus);
}

TEST_CASE("a frame along the van leans on its left side", "[model][room][lean]") {
    auto project = box(locker());
    project = with(std::move(project), PlaceFrame{"locker", {"3/4", "6", "0"}, 0});
    const auto after = leaned(project);
    CAPTURE(to_mend(after));
    CHECK(to_mend(after).empty());
    REQUIRE(after.frames[0].leaning.size() == 2);
    CHECK(after.frames[0].leaning[0].face == "front");
}

// Their rails run past those of the shelves as the others do, which parts the shelves' front rails.
TEST_CASE("posts of dividers lean too, and the loose ends that are left are told",
          "[model][room][lean]") {
    auto start = locker();
    start.dividers = {"15"};
    const auto after = leaned(box(start));
    CHECK(after.frames[0].leaning.size() == 3);
    std::vector<std::string> codes;
    for (const auto& finding : resolve_in_room(after, catalogue(), {}).findings) {
        if (finding.severity == Severity::note) continue;
        CHECK(finding.severity == Severity::warning);
        codes.push_back(finding.code);
    }
    CHECK(codes == std::vector<std::string>{"loose_end", "loose_end"});
}

TEST_CASE("a frame without shelves leans too", "[model][room][lean]") {
    auto start = locker();
    start.shelf_levels.clear();
    const auto after = leaned(box(start));
    CHECK(to_mend(after).empty());
    CHECK(formula_of(after, "behind rail").empty());
}

TEST_CASE("bays end where their upper rails are", "[model][room][lean]") {
    const auto after = leaned(box(locker()));
    for (const auto& bay : after.frames[0].bays) CHECK(bay.y[1] != "back");
    CHECK(after.frames[0].bays.size() == 3);
}

TEST_CASE("what cannot lean is told, with the mend", "[model][room][lean]") {
    auto upright = box(locker());
    std::get<WallProfile>(upright.room[0].shape).offsets[1].inset = "0";
    CHECK_THAT(refusal_of(upright), Contains("does not lean in"));

    auto flat = box(locker());
    std::get<WallProfile>(flat.room[0].shape).offsets[1].inset = "60";
    CHECK_THAT(refusal_of(flat), Contains("more than 45 degrees"));

    auto shallow = box(locker());
    shallow = with(std::move(shallow), SetFormula{"depth", "8"});
    CHECK_THAT(refusal_of(shallow), Contains("too shallow"));

    auto closed = box(locker());
    closed.frames[0].panels.push_back({.name = "rear",
                                       .bay = closed.frames[0].bays[0].name,
                                       .face_side = Sense::plus,
                                       .material = "5052-H32",
                                       .thickness = "1/8 in"});
    CHECK_THAT(refusal_of(closed), Contains("panel rear"));

    CHECK_THAT(refusal_of(leaned(box(locker()))), Contains("leans on that side already"));

    auto open = box(locker());
    std::erase_if(open.frames[0].members,
                  [](const Member& member) { return member.name.starts_with("post back"); });
    CHECK_THAT(refusal_of(open), Contains("no post"));
}

TEST_CASE("a wall that bulges half-way up asks for the lean that clears it",
          "[model][room][lean]") {
    auto project = box(locker());
    // 3 in further in at 24 in: a straight post must come in by 6 in over 48.
    std::get<WallProfile>(project.room[0].shape).offsets = {{"0", "0"}, {"24", "3"}, {"48", "4"}};
    const auto after = leaned(project);
    CHECK(formula_of(after, "leans in") == "6");
    CHECK(to_mend(after).empty());
}

TEST_CASE("only the stretch of the wall along the frame counts", "[model][room][lean]") {
    auto project = box(locker());
    auto& wall = std::get<WallProfile>(project.room[0].shape);
    // Further along it leans in far more; at y = 36, where the frame ends, not yet.
    wall.stations = {{"36", {{"0", "0"}, {"48", "4 1/4"}}}, {"60", {{"0", "0"}, {"48", "20"}}}};
    CHECK(formula_of(leaned(project), "leans in") == "4 1/4");
}

TEST_CASE("how far a wall leans in is worked out from its surface", "[model][room][lean]") {
    // From x = 0 at the floor to x = 100 mm at 1 m, between y = 0 and y = 2 m.
    const std::vector<engine::Prism> bodies{
        {.near = {{0, 0, 0}, {0, 2000, 0}, {100, 2000, 1000}, {100, 0, 1000}}, .far = {}}};
    CHECK(wall_lean(bodies, Sense::plus, {{0, 2000}, {0, 1000}}) == Approx(100.0));
    CHECK(wall_lean(bodies, Sense::plus, {{500, 600}, {200, 700}}) == Approx(50.0));
    CHECK(wall_lean(bodies, Sense::minus, {{0, 2000}, {0, 1000}}) == 0.0);
    CHECK(wall_lean(bodies, Sense::plus, {{3000, 4000}, {0, 1000}}) == 0.0);
}

TEST_CASE("a rail on another plane at the height of the feet is a rail of the floor",
          "[model][room][lean]") {
    auto project = with(box(locker()), PutPlane{"locker", {"sole", Axis::z, "0"}, {}});
    for (auto member : project.frames[0].members) {
        if (member.run != Axis::x || member.on[1] != "bottom") continue;
        member.on[1] = "sole";
        project = with(std::move(project), PutMember{"locker", member, {}});
    }
    const auto before = box(locker());
    CHECK(leaned(project).frames[0].planes.size() == leaned(before).frames[0].planes.size() + 1);
    CHECK(to_mend(leaned(project)) == to_mend(leaned(before)));
}

// Corners that hang in the air: told where a post is missing, and nowhere where something else
// carries them.
#include "model/resolve/open_corners.h"

#include "model/mend/mend.h"
#include "model/project/edit.h"
#include "model/project/project_json.h"
#include "model/room/resolve_in_room.h"

#include "tests/model/project/sample_files.h"
#include "tests/model/resolve/resolve_support.h"
#include "tests/support/dice.h"
#include "tests/support/seeds.h"

#include <algorithm>
#include <string>
#include <tuple>
#include <utility>

using namespace model;

namespace {

constexpr const char* code = "corner_not_carried";

Project started(const Edit& edit) {
    const Project empty{.stock = {tests::stock_of("angle", "angle 1 x 1 x 1/8", "6063-T52")}};
    auto project = apply(empty, edit);
    if (!project) FAIL(engine::to_text(project.error()));
    return std::move(project).value();
}

Project box(std::vector<Formula> shelves = {"12"}, std::vector<Formula> dividers = {}) {
    return started(StartBoxFrame{.frame = "box",
                                 .stock = "angle",
                                 .width = "36",
                                 .depth = "18",
                                 .height = "30",
                                 .shelf_levels = std::move(shelves),
                                 .dividers = std::move(dividers)});
}

Project stepped() {
    return started(StartSteppedFrame{.frame = "counter",
                                     .stock = "angle",
                                     .width = "44",
                                     .depth = "22",
                                     .height = "36",
                                     .well_height = "12",
                                     .well_depth = "9",
                                     .shelf_levels = {"20"},
                                     .dividers = {"20"}});
}

Project without(Project project, const std::string& member) {
    const auto count = std::erase_if(project.frames[0].members,
                                     [&](const Member& it) { return it.name == member; });
    CAPTURE(member);
    REQUIRE(count == 1);
    return project;
}

Member member_of(const Project& project, const std::string& name) {
    const auto& members = project.frames[0].members;
    const auto at = std::ranges::find(members, name, &Member::name);
    REQUIRE(at != members.end());
    return *at;
}

long told(const Project& project) { return tests::count_of(tests::resolved(project), code); }

// Whether an outer corner of the frame's bays is where this post stands.
bool is_in_corner(const Frame& frame, const Member& post) {
    const auto is_side = [&](const std::string& plane) {
        return plane == "left" || plane == "right" || plane == "front" || plane == "back" ||
               plane == "well front";
    };
    return !frame.bays.empty() && post.run == Axis::z && is_side(post.on[0]) && is_side(post.on[1]);
}

}  // namespace

TEST_CASE("a box without one of its corner posts hangs there in the air", "[model][corners]") {
    const auto whole = box();
    REQUIRE(told(whole) == 0);
    for (const auto* y : {"front", "back"}) {
        for (const auto* x : {"left", "right"}) {
            const auto resolved =
                tests::resolved(without(whole, "post " + std::string(y) + " " + x));
            CAPTURE(y, x);
            REQUIRE(tests::count_of(resolved, code) == 1);
            const auto* finding = tests::first_of(resolved, code);
            CHECK(finding->severity == Severity::warning);
            CHECK(finding->what == "nothing carries the corner of \"" + std::string(y) +
                                       "\" and \"" + x +
                                       "\" from \"bottom\" to \"top\": the rails that end there "
                                       "hold only each other");
            CHECK(finding->concerns.size() == 4);  // of the shelf and the top; the others stand
            CHECK(std::get<Length>(finding->numbers[0].value).nm() == tests::inches(30));
            CHECK(tests::count_of(resolved, "loose_end") == 0);
        }
    }
}

TEST_CASE("every corner that has lost its post is told by itself", "[model][corners]") {
    auto project = without(box(), "post front left");
    CHECK(told(without(project, "post back right")) == 2);
    CHECK(told(without(project, "post front right")) == 2);
}

TEST_CASE("a post between the corners is none of them", "[model][corners]") {
    const auto project = box({}, {"18"});
    CHECK(told(without(project, "post front divider 1")) == 0);
    CHECK(told(without(project, "post front right")) == 1);
}

TEST_CASE("the post that is offered carries the corner again", "[model][corners]") {
    const auto project = without(box(), "post front right");
    const auto resolved = resolve_in_room(project, tests::shipped_catalogue());
    const auto before = findings_where_it_stands(project, tests::shipped_catalogue(), {});
    const auto at = std::ranges::find(before, code, &Finding::code);
    REQUIRE(at != before.end());
    const Ailing ailing{project, tests::shipped_catalogue(), resolved};
    const auto mends = mends_of(ailing, {}, before, std::span(&*at, 1), 3);
    REQUIRE(mends.size() == 1);
    CHECK(mends[0].words == "Put a post of angle at front right, from bottom to top");
    const auto next = mended(project, mends[0]);
    REQUIRE(next);
    const auto post = member_of(next.value(), "post front right");
    const auto lost = member_of(box(), "post front right");
    CHECK(post.on == lost.on);
    CHECK(post.legs == lost.legs);
    CHECK(post.from == lost.from);
    CHECK(post.to == lost.to);
}

TEST_CASE("a post in two parts carries a corner, and one of them does not", "[model][corners]") {
    auto project = box();
    auto lower = member_of(project, "post front right");
    auto upper = lower;
    project = without(std::move(project), "post front right");
    lower.name = "lower";
    lower.to = "shelf 1";
    upper.name = "upper";
    upper.from = "shelf 1";
    auto with_lower = project;
    with_lower.frames[0].members.push_back(lower);
    auto with_upper = project;
    with_upper.frames[0].members.push_back(upper);
    auto with_both = with_lower;
    with_both.frames[0].members.push_back(upper);
    CHECK(told(with_both) == 0);
    CHECK(told(with_lower) == 1);
    CHECK(told(with_upper) == 1);
    CHECK(tests::first_of(tests::resolved(with_lower), code)
              ->what.find("from \"shelf 1\" to \"top\"") != std::string::npos);
}

TEST_CASE("a post set in by no more than a lap reaches carries the corner", "[model][corners]") {
    auto project = box();
    project.frames[0].planes.push_back({"set in", Axis::x, "width - 1 1/2 in"});
    project.frames[0].planes.push_back({"further in", Axis::x, "width - 2 in"});
    for (const auto& [plane, count] : {std::pair{"set in", 0L}, std::pair{"further in", 1L}}) {
        auto moved = project;
        for (auto& member : moved.frames[0].members) {
            if (member.name == "post front right") member.on[0] = plane;
        }
        CAPTURE(plane);
        CHECK(told(moved) == count);
    }
}

TEST_CASE("a leaning post, braces at each level, feet and a fixed panel carry a corner",
          "[model][corners]") {
    const auto open = without(box({}), "post front right");
    REQUIRE(told(open) == 1);
    SECTION("leaning") {
        auto project = open;
        project.frames[0].planes.push_back({"in front", Axis::y, "3"});
        project.frames[0].leaning.push_back({.name = "leaning post",
                                             .stock = "angle",
                                             .face = "right",
                                             .from = {"in front", "bottom"},
                                             .to = {"front", "top"}});
        CHECK(told(project) == 0);
    }
    SECTION("brace") {
        auto project = open;
        project.stock.push_back(tests::stock_of("flat", "flat 1 x 1/8", "6063-T52"));
        project.frames[0].diagonals.push_back({.name = "brace",
                                               .stock = "flat",
                                               .face = "front",
                                               .from = {"left", "bottom"},
                                               .to = {"right", "top"}});
        const auto braced = tests::resolved(project);
        CHECK(tests::count_of(braced, code) == 0);
        REQUIRE(tests::count_of(braced, "corner_on_brace") == 1);
        const auto* note = tests::first_of(braced, "corner_on_brace");
        CHECK(note->severity == Severity::note);
        CHECK(note->what ==
              "the corner of \"front\" and \"right\" from \"bottom\" to \"top\" is held by a "
              "brace only: it carries no weight unless something stands under it");
        CHECK(note->concerns.size() == 2);
        project.frames[0].diagonals[0].to = {"right", "bottom"};
        CHECK(told(project) == 1);
    }
    SECTION("foot") {
        auto project = open;
        for (auto& member : project.frames[0].members) {
            if (member.name == "rail front top") member.foot_to = true;
        }
        CHECK(told(project) == 0);
    }
    SECTION("panel") {
        for (const auto& [use, count] :
             {std::pair{PanelUse::fixed, 0L}, std::pair{PanelUse::door, 1L}}) {
            auto project = open;
            project.frames[0].panels.push_back({.name = "sheet",
                                                .bay = project.frames[0].bays[0].name,
                                                .face_axis = Axis::y,
                                                .face_side = Sense::minus,
                                                .material = "5052-H32",
                                                .thickness = "1/16 in",
                                                .use = use});
            CHECK(told(project) == count);
        }
    }
}

TEST_CASE("without bays, or where one has no place, nobody knows what is outside",
          "[model][corners]") {
    auto project = without(box(), "post front right");
    auto bare = project;
    bare.frames[0].bays.clear();
    CHECK(told(bare) == 0);
    project.frames[0].bays[0].x[1] = "nowhere";
    CHECK(told(project) == 0);
}

TEST_CASE("a brace that lies level carries no corner", "[model][corners]") {
    auto project = without(box({}), "post front right");
    project.stock.push_back(tests::stock_of("flat", "flat 1 x 1/8", "6063-T52"));
    auto& braces = project.frames[0].diagonals;
    braces = {{.name = "brace",
               .stock = "flat",
               .face = "top",
               .from = {"right", "front"},
               .to = {"left", "back"},
               .side = FaceSide::outside}};
    CHECK(told(project) == 1);
    project.frames[0].planes.push_back({"middle", Axis::x, "18"});
    braces[0].face = "front";
    braces[0].from = {"middle", "top"};
    braces[0].to = {"right", "top"};
    CHECK(told(project) == 1);
    braces[0].from = {"middle", "bottom"};
    CHECK(told(project) == 0);
}

TEST_CASE("a braced corner that a post carries is no matter for a note", "[model][corners]") {
    auto project = box({});
    project.stock.push_back(tests::stock_of("flat", "flat 1 x 1/8", "6063-T52"));
    project.frames[0].diagonals.push_back({.name = "brace",
                                           .stock = "flat",
                                           .face = "front",
                                           .from = {"left", "bottom"},
                                           .to = {"right", "top"}});
    CHECK(tests::count_of(tests::resolved(project), "corner_on_brace") == 0);
}

TEST_CASE("a post that ends a little lower carries what laps it", "[model][corners]") {
    auto project = box({});
    project.frames[0].planes.push_back({"post top", Axis::z, "29 1/4"});
    for (auto& member : project.frames[0].members) {
        if (member.name == "post front right") member.to = "post top";
    }
    CHECK(told(project) == 0);
    for (const auto& [top, corners, ends] :
         {std::tuple{"28 5/8", 0L, 1L}, std::tuple{"28 1/4", 1L, 1L}}) {
        CAPTURE(top);
        project.frames[0].planes.back().position = top;
        const auto resolved = tests::resolved(project);
        CHECK(tests::count_of(resolved, code) == corners);
        CHECK(tests::count_of(resolved, "loose_end") == ends);
    }
}

TEST_CASE("rails that end near each other end in one corner", "[model][corners]") {
    auto project = without(box(), "post front right");
    project.frames[0].planes.push_back({"set in", Axis::x, "width - 1/4 in"});
    project.frames[0].planes.push_back({"further in", Axis::x, "width - 2 in"});
    project.frames[0].planes.push_back({"a little beyond", Axis::x, "width + 1/4 in"});
    for (const auto& [plane, count] : {std::pair{"set in", 1L}, std::pair{"further in", 0L}}) {
        CAPTURE(plane);
        auto moved = project;
        for (auto& member : moved.frames[0].members) {
            if (member.run == Axis::y && member.on[0] == "right") member.on[0] = plane;
        }
        CHECK(told(moved) == count);
    }
    for (auto& member : project.frames[0].members) {
        if (member.run == Axis::x && member.on[0] == "front") member.to = "a little beyond";
    }
    CHECK(told(project) == 1);
}

TEST_CASE("a bay that nothing is left of silences no corner", "[model][corners]") {
    auto project = without(box(), "post front right");
    project.frames[0].bays.push_back(
        {.name = "ghost", .x = {"left", "right"}, .y = {"front", "back"}, .z = {"top", "bottom"}});
    CHECK(told(project) == 1);
}

TEST_CASE("a leaning member carries a corner only where it is near", "[model][corners]") {
    auto project = without(box({"14"}), "post front right");
    project.frames[0].leaning.push_back({.name = "leaning post",
                                         .stock = "angle",
                                         .face = "right",
                                         .from = {"front", "bottom"},
                                         .to = {"back", "top"}});
    const auto resolved = tests::resolved(project);
    REQUIRE(tests::count_of(resolved, code) == 1);
    CHECK(tests::first_of(resolved, code)->what ==
          "nothing carries the corner of \"front\" and \"right\" from above \"bottom\" to "
          "\"top\": the rails that end there hold only each other");
    // 1 1/2 in of 18 in deep, of 30 in high
    CHECK(std::get<Length>(tests::first_of(resolved, code)->numbers[0].value).nm() ==
          tests::inches(30) - tests::inches(5) / 2);
}

TEST_CASE("a post carries as far as it is not held back", "[model][corners]") {
    auto project = box({});
    for (auto& member : project.frames[0].members) {
        if (member.name == "post front right") member.allowance_to = "20";
    }
    const auto resolved = tests::resolved(project);
    REQUIRE(tests::count_of(resolved, code) == 1);
    CHECK(std::get<Length>(tests::first_of(resolved, code)->numbers[0].value).nm() ==
          tests::inches(20));
    for (auto& member : project.frames[0].members) {
        if (member.name == "post front right") member.allowance_to = "1/2";
    }
    CHECK(told(project) == 0);
}

TEST_CASE("where rails run on past a corner, or only one ends there, nothing is told",
          "[model][corners]") {
    const auto open = without(box({}), "post front right");
    auto project = open;
    project.frames[0].planes.push_back({"beyond", Axis::x, "width + 6 in"});
    for (auto& member : project.frames[0].members) {
        if (member.name == "rail front top") member.to = "beyond";
    }
    CHECK(told(project) == 0);
    CHECK(told(without(open, "rail front top")) == 0);
}

TEST_CASE("a frame that steps back under a bay has no corner there", "[model][corners]") {
    auto project = stepped();
    auto& bays = project.frames[0].bays;
    bays = {
        {.name = "all", .x = {"left", "right"}, .y = {"front", "back"}, .z = {"bottom", "top"}}};
    CHECK(told(project) == 0);
    CHECK(told(without(project, "post back left")) == 1);
}

TEST_CASE("no sample and no started frame has a corner in the air", "[model][corners][samples]") {
    for (const auto& name : model_tests::sample_names()) {
        CAPTURE(name);
        const auto project = read_project_json(model_tests::sample_text(name));
        REQUIRE(project);
        CHECK(told(project.value()) == 0);
    }
    CHECK(told(stepped()) == 0);
}

TEST_CASE("random started boxes have no corner in the air, and one for each post that they lose",
          "[model][corners]") {
    const auto draws = tests::seed_count(40);
    for (std::uint32_t draw = 0; draw < draws; ++draw) {
        CAPTURE(draw);
        tests::Dice dice(draw);
        std::vector<Formula> shelves;
        std::vector<Formula> dividers;
        const auto shelf_count = dice.below(4);
        const auto divider_count = dice.below(3);
        for (std::uint32_t i = 0; i < shelf_count; ++i)
            shelves.push_back(std::to_string(5 + 6 * i + dice.below(3)));
        for (std::uint32_t i = 0; i < divider_count; ++i)
            dividers.push_back(std::to_string(9 + 11 * i + dice.below(6)));
        const auto whole = box(shelves, dividers);
        CHECK(told(whole) == 0);
        const std::string y = dice.chance(50) ? "front" : "back";
        const std::string x = dice.chance(50) ? "left" : "right";
        CHECK(told(without(whole, "post " + y + " " + x)) == 1);
    }
}

TEST_CASE("each corner post of stepped frames is missed once", "[model][corners]") {
    const auto sample = read_project_json(model_tests::sample_text("work_counter.json"));
    REQUIRE(sample);
    for (const auto& whole : {stepped(), sample.value()}) {
        int corners = 0;
        for (const auto& post : whole.frames[0].members) {
            if (!is_in_corner(whole.frames[0], post)) continue;
            CAPTURE(post.name);
            const auto open = without(whole, post.name);
            CHECK(told(open) == 1);
            ++corners;
        }
        CHECK(corners == 6);
    }
}

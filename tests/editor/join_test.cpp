// The Join place: how members meet, what each way would cost, and what a choice has changed.
#include "editor/choice_price.h"
#include "editor/commands.h"
#include "editor/join_choices.h"
#include "editor/joint_list.h"
#include "editor/keys.h"
#include "editor/places/consequences.h"
#include "editor/places/joint_choice.h"
#include "editor/places/joint_findings.h"
#include "editor/typing.h"
#include "engine/render/camera.h"
#include "model/resolve/recipe.h"

#include "tests/editor/headless_ui.h"
#include "tests/support/frame_builder.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Contains;
using Catch::StartsWith;
using tests::HeadlessUi;
namespace key = editor::key;

namespace {

const model::Project& project_in(HeadlessUi& ui) { return editor::project_of(ui.desk); }

std::vector<editor::MemberJoint> joints_of(HeadlessUi& ui) {
    const auto& now = ui.now();
    return editor::member_joints(*now.project, now.resolved, now.findings);
}

const model::Joint& first_lap_of(HeadlessUi& ui, const editor::JointName& name) {
    const auto& now = ui.now();
    for (const auto& lap : now.resolved.joints) {
        const auto& upper = now.resolved.pieces[lap.pieces[0]];
        const auto& lower = now.resolved.pieces[lap.pieces[1]];
        const auto& members = now.project->frames[lap.frame].members;
        if (upper.member == model::no_index || lower.member == model::no_index) continue;
        if (members[upper.member].name == name.members[0] &&
            members[lower.member].name == name.members[1]) {
            return lap;
        }
    }
    FAIL("no lap of " << editor::words_of(name));
    std::abort();
}

void choose(HeadlessUi& ui, const editor::JointName& joint) {
    const auto& now = ui.now();
    ui.desk.ui.selection = editor::selection_of_joint(*now.project, now.resolved, joint);
    ui.settle();
}

// A post with three arms. What else an arm were joined to would hold it in its layer, so that it
// could not be made flush at one end alone.
model::Project stand() {
    using model::Axis;
    using model::Sense;
    using tests::inches;
    tests::FrameBuilder builder("stand");
    const auto name_it = [](model::Member& member, const char* name) { member.name = name; };
    name_it(builder.member("main", Axis::z, {0, 0}, 0, inches(30), {Sense::plus, Sense::plus}),
            "post");
    const auto arm = [&](const char* name, model::Nm z) {
        name_it(builder.member("main", Axis::x, {0, z}, 0, inches(24), {Sense::plus, Sense::plus}),
                name);
    };
    arm("arm low", inches(6));
    arm("arm mid", inches(12));
    arm("arm high", inches(18));
    model::Project project;
    project.name = "Stand";
    project.stock = {tests::stock_of("main", "angle 1 1/4 x 1 1/4 x 1/8", "6063-T52")};
    project.frames = {std::move(builder.frame())};
    return project;
}

// At the Join place with a joint of the stand chosen.
editor::JointName start_at_joint(HeadlessUi& ui) {
    editor::replace_project(ui.desk, stand(), {});
    editor::run_command(ui.desk, "place.join");
    ui.settle();
    const auto joint = joints_of(ui).front().name;
    choose(ui, joint);
    return joint;
}

int pieces_of_kind(HeadlessUi& ui, model::PieceKind kind) {
    const auto& pieces = ui.now().resolved.pieces;
    return static_cast<int>(std::count_if(pieces.begin(), pieces.end(),
                                          [&](const auto& piece) { return piece.kind == kind; }));
}

}  // namespace

TEST_CASE("another way for one joint changes pieces, holes, fasteners and weight, and says so",
          "[editor][join]") {
    HeadlessUi ui;
    const auto joint = start_at_joint(ui);
    const auto before = ui.desk.history.now();
    const auto figures = editor::figures_of(ui.now());
    ui.click("Join/meet: flush");
    const auto* stated = editor::stated_joint(project_in(ui), joint);
    REQUIRE(stated != nullptr);
    CHECK(stated->recipe == "flush");
    const auto& now = ui.now();
    CHECK(pieces_of_kind(ui, model::PieceKind::gusset) > 0);
    CHECK(now.tally.holes != figures.tally.holes);
    CHECK(now.resolved.fasteners.size() != static_cast<std::size_t>(figures.summary.fasteners));
    CHECK(now.summary.weight_kg != figures.summary.weight_kg);
    const auto text = editor::last_edit_text(ui.desk);
    CHECK_THAT(text, StartsWith("Flush at " + editor::words_of(joint)));
    for (const char* word : {"gusset", "hole", "rivet", "oz"}) CHECK_THAT(text, Contains(word));
    CHECK(ui.item("Consequences/Last edit").value == text);
    CHECK_THAT(ui.item("Join/meet: flush").value, StartsWith("now: "));
    ui.press('Z', key::left_control);
    CHECK(project_in(ui) == *before);
    CHECK(ui.now().tally == figures.tally);
    CHECK_THAT(ui.item("Join/meet: as the frame has it").value, StartsWith("now: "));
}

TEST_CASE("the price of a choice is what it turns out to be", "[editor][join]") {
    HeadlessUi ui;
    const auto joint = start_at_joint(ui);
    for (const auto& choice : editor::joint_recipe_choices(project_in(ui), joint)) {
        if (choice.is_now) continue;
        INFO(choice.name);
        const auto before = editor::figures_of(ui.now());
        const auto price = editor::price_of(ui.now(), *ui.desk.catalogue, choice);
        REQUIRE(editor::submit(ui.desk, editor::change_of(choice)));
        const auto& after = ui.now();
        CHECK(price.pieces == after.summary.pieces - before.summary.pieces);
        CHECK(price.holes == after.tally.holes - before.tally.holes);
        CHECK(price.fasteners == after.summary.fasteners - before.summary.fasteners);
        CHECK(price.weight_kg ==
              Approx(after.summary.weight_kg - before.summary.weight_kg).margin(1e-9));
        CHECK_FALSE((price.brings.empty() && after.summary.open() > before.summary.open()));
        ui.desk.history.undo();
    }
}

TEST_CASE("every recipe has a row with its price, for a joint, a frame and the whole project",
          "[editor][join]") {
    HeadlessUi ui;
    start_at_joint(ui);
    for (const char* scope : {"Join/Joint", "Join/Frame", "Join/Project"}) {
        ui.click(scope);
        for (const auto& recipe : model::recipes()) {
            if (!recipe.is_chosen) continue;
            INFO(scope << " " << recipe.name);
            const auto& row = ui.item("Join/meet: " + std::string(recipe.name));
            CHECK_FALSE(row.value.empty());
            CHECK_THAT(row.value, !Contains("worked out"));
        }
    }
}

TEST_CASE("one price at most is worked out in a frame, and none while a button is held",
          "[editor][join]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto joint = joints_of(ui).front().name;
    const auto choices = editor::joint_recipe_choices(project_in(ui), joint);
    editor::PriceBoard board;
    const auto known = [&] {
        int count = 0;
        for (const auto& choice : choices) {
            count += editor::price_on(board, "a", ui.now(), *ui.desk.catalogue, choice) ? 1 : 0;
        }
        return count;
    };
    editor::begin_prices(board, ui.now(), false);
    CHECK(known() == 0);
    CHECK(board.has_more);
    for (int i = 1; i <= static_cast<int>(choices.size()); ++i) {
        editor::begin_prices(board, ui.now(), true);
        CHECK(known() == i);
    }
    CHECK_FALSE(board.has_more);
    REQUIRE(editor::submit(ui.desk, editor::change_of(choices.back())));
    editor::begin_prices(board, ui.now(), false);
    CHECK(known() == 0);
}

TEST_CASE("a way is chosen for the frame and for the whole project", "[editor][join]") {
    HeadlessUi ui;
    start_at_joint(ui);
    const auto before = ui.desk.history.now();
    ui.click("Join/Frame");
    ui.click("Join/meet: corner cleat");
    CHECK(project_in(ui).frames[0].recipe == "corner cleat");
    CHECK(pieces_of_kind(ui, model::PieceKind::cleat) > 0);
    CHECK_THAT(editor::last_edit_text(ui.desk), Contains("cleats"));
    ui.click("Join/meet: as the project has it");
    CHECK(project_in(ui).frames[0].recipe.empty());
    ui.click("Join/Project");
    ui.click("Join/meet: flush");
    CHECK(project_in(ui).shop.recipe == "flush");
    CHECK(pieces_of_kind(ui, model::PieceKind::gusset) > 0);
    for (int i = 0; i < 3; ++i) ui.press('Z', key::left_control);
    CHECK(project_in(ui) == *before);
}

TEST_CASE("a joint is made to come apart with rivet nuts", "[editor][join]") {
    HeadlessUi ui;
    const auto joint = start_at_joint(ui);
    const auto before = ui.desk.history.now();
    ui.click("Join/What holds them");
    CHECK_THAT(ui.item("Join/hold: comes apart, rivet nuts").value, Contains("rivet nut"));
    ui.click("Join/hold: comes apart, rivet nuts");
    const auto* stated = editor::stated_joint(project_in(ui), joint);
    REQUIRE(stated != nullptr);
    CHECK(stated->removable);
    CHECK(stated->screw_hold == model::ScrewHold::rivet_nut);
    CHECK(ui.now().tally.nuts.at("rivet nut") > 0);
    CHECK_THAT(editor::last_edit_text(ui.desk), Contains("rivet nut"));
    ui.click("Join/hold: for good");
    CHECK(project_in(ui) == *before);
}

TEST_CASE("fastener, number and note of a joint are stated, and all are taken back at once",
          "[editor][join]") {
    HeadlessUi ui;
    const auto joint = start_at_joint(ui);
    const auto before = ui.desk.history.now();
    ui.click("Join/What holds them");
    ui.click("Join/Fastener of the joint");
    ui.click("Join/Fastener of the joint list/blind rivet 3/32");
    ui.click("Join/Count of the joint");
    ui.click("Join/Count of the joint list/1");
    ui.fill("Join/Note", "under the lid");
    const auto* stated = editor::stated_joint(project_in(ui), joint);
    REQUIRE(stated != nullptr);
    CHECK(stated->fastener == "blind rivet 3/32");
    CHECK(stated->count == 1);
    CHECK(stated->note == "under the lid");
    ui.click("Join/Back to the rule");
    CHECK(project_in(ui).frames == before->frames);
}

TEST_CASE("a note half typed is kept when another joint is chosen and when the place is left",
          "[editor][join]") {
    HeadlessUi ui;
    const auto joint = start_at_joint(ui);
    ui.write("Join/Note", "mind the wire");
    choose(ui, joints_of(ui).back().name);
    CHECK(editor::joint_entry(project_in(ui), joint).note == "mind the wire");
    CHECK(ui.item("Join/Note").value.empty());
    choose(ui, joint);
    ui.write("Join/Note", "mind the pipe");
    ui.press('2', key::left_control);
    CHECK(editor::joint_entry(project_in(ui), joint).note == "mind the pipe");
}

TEST_CASE("screws, what holds them and the sheet of gussets are set for the whole project",
          "[editor][join]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.join");
    ui.settle();
    ui.click("Join/Project");
    ui.click("Join/What holds them");
    const auto before = ui.desk.history.now();
    const auto choose_from = [&](const std::string& list, const std::string& entry) {
        REQUIRE(ui.item("Join/" + list).visible);
        ui.click("Join/" + list);
        ui.click("Join/" + list + " list/" + entry);
    };
    choose_from("Count", "3");
    choose_from("Screw", "machine screw 8-32");
    choose_from("Screw hold", "nuts");
    choose_from("Gusset alloy", "6061-T6");
    ui.fill("Join/Gusset sheet", "3/32 in");
    const auto& shop = project_in(ui).shop;
    CHECK(shop.per_lap == 3);
    CHECK(shop.screw == "machine screw 8-32");
    CHECK(shop.screw_hold == model::ScrewHold::nut);
    CHECK(shop.gusset_alloy == "6061-T6");
    CHECK(shop.gusset_thickness == "3/32 in");
    for (int i = 0; i < 5; ++i) ui.press('Z', key::left_control);
    CHECK(project_in(ui) == *before);
}

TEST_CASE("a thickness that cannot be stays in its field with the reason", "[editor][join]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.join");
    ui.settle();
    ui.click("Join/Project");
    ui.click("Join/What holds them");
    const auto before = ui.desk.history.now();
    for (const char* text : {"0", "-1/8", "thick"}) {
        INFO(text);
        ui.fill("Join/Gusset sheet", text);
        CHECK(ui.desk.history.now() == before);
        CHECK_FALSE(ui.desk.ui.join.typing.trouble.empty());
        CHECK_THAT(editor::refused_typing(ui.desk), StartsWith("gusset sheet"));
        CHECK(ui.item("Join/Gusset sheet").value == text);
    }
}

TEST_CASE("a joint is chosen by its place in the view, in the middle of a bar the piece",
          "[editor][join]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.join");
    ui.settle();
    int chosen = 0;
    for (const auto& joint : joints_of(ui)) {
        const auto& now = ui.now();
        const auto& lap = first_lap_of(ui, joint.name);
        model::Point middle{};
        for (std::size_t i = 0; i < 3; ++i) middle[i] = (lap.lap.lo[i] + lap.lap.hi[i]) / 2;
        const auto room = model::to_room(now.resolved.frames[lap.frame], middle);
        const glm::dvec3 mm = glm::dvec3(room[0], room[1], room[2]) / 1.0e6;
        const auto near = editor::joint_near(*now.project, now.resolved, lap.pieces[0], mm);
        REQUIRE(near);
        const auto pixel = engine::pixel_of(ui.desk.ui.view.camera, mm, ui.desk.ui.view.viewport);
        REQUIRE(pixel);
        const auto view = ui.item("View/picture");
        ui.click_at(view.left + static_cast<float>(pixel->x),
                    view.top + static_cast<float>(pixel->y));
        const auto found =
            editor::chosen_joint(*now.project, now.resolved, joints_of(ui), ui.desk.ui.selection);
        chosen += found && *found == joint.name ? 1 : 0;
    }
    CHECK(chosen >= 4);  // others lie behind a bar or close to another joint
    const auto& now = ui.now();
    const auto& box = now.resolved.pieces[0].extents;
    model::Point middle{};
    for (std::size_t i = 0; i < 3; ++i) middle[i] = (box.lo[i] + box.hi[i]) / 2;
    const glm::dvec3 mm = glm::dvec3(middle[0], middle[1], middle[2]) / 1.0e6;
    CHECK_FALSE(editor::joint_near(*now.project, now.resolved, 0, mm));
}

TEST_CASE("a joint is known by its two members and by a part that was made for it",
          "[editor][join]") {
    HeadlessUi ui;
    const auto joint = start_at_joint(ui);
    ui.click("Join/meet: flush");
    const auto& now = ui.now();
    const auto joints = joints_of(ui);
    editor::Selection selection;
    for (const auto& member : joint.members) {
        selection.pieces.push_back({joint.frame, member, 0});
    }
    CHECK(editor::chosen_joint(*now.project, now.resolved, joints, selection) == joint);
    model::Index gusset = 0;
    while (now.resolved.pieces[gusset].kind != model::PieceKind::gusset) ++gusset;
    selection = editor::selection_of(*now.project, now.resolved, {gusset});
    CHECK(editor::chosen_joint(*now.project, now.resolved, joints, selection) == joint);
    selection = editor::selection_of_member(*now.project, now.resolved, joint.members[0]);
    CHECK_FALSE(editor::chosen_joint(*now.project, now.resolved, joints, selection));
}

TEST_CASE("the parts that a choice makes are selected with their joint", "[editor][join]") {
    HeadlessUi ui;
    start_at_joint(ui);
    const auto has_gusset = [&] {
        const auto& pieces = ui.desk.ui.selection.pieces;
        return std::any_of(pieces.begin(), pieces.end(), [](const editor::PieceName& piece) {
            return piece.what.find("gusset") != std::string::npos;
        });
    };
    CHECK_FALSE(has_gusset());
    ui.click("Join/meet: flush");
    CHECK(has_gusset());
}

TEST_CASE("the joints of the chosen members come first in the list, from which one is chosen",
          "[editor][join]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.join");
    ui.settle();
    const auto joints = joints_of(ui);
    const auto member = joints.back().name.members[1];
    ui.desk.ui.selection = editor::selection_of_member(project_in(ui), ui.now().resolved, member);
    const auto order = editor::joint_order(joints, ui.desk.ui.selection);
    REQUIRE(order.of_chosen > 0);
    CHECK(order.joints.size() == joints.size());
    for (std::size_t i = 0; i < order.joints.size(); ++i) {
        const auto& members = joints[order.joints[i]].name.members;
        const bool is_of_it = members[0] == member || members[1] == member;
        CHECK(is_of_it == (i < order.of_chosen));
    }
    ui.settle();
    const auto click_joint = [&](std::size_t i) {
        const auto& name = joints[i].name;
        ui.click("Join/Joint list/" + name.frame + ": " + editor::words_of(name));
        CHECK(editor::chosen_joint(project_in(ui), ui.now().resolved, joints,
                                   ui.desk.ui.selection) == name);
    };
    click_joint(order.joints[0]);
    ui.click("Join/Joint of choice");
    click_joint(order.joints[1]);
}

TEST_CASE("what is found at a joint stands beside its choices", "[editor][join]") {
    HeadlessUi ui;
    const auto joint = start_at_joint(ui);
    CHECK_FALSE(ui.has("Join/finding 1"));
    auto entry = editor::joint_entry(project_in(ui), joint);
    entry.recipe = "glue";
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutJoint{joint.frame, entry})));
    ui.settle();
    CHECK_THAT(ui.item("Join/finding 1").value, Contains("glue"));
    CHECK_FALSE(editor::findings_of(ui.now(), joint).empty());
    CHECK(editor::find_joint(joints_of(ui), joint)->has_finding);
}

TEST_CASE("a choice that mends what is to mend says so", "[editor][join]") {
    HeadlessUi ui;
    const auto joint = start_at_joint(ui);
    auto entry = editor::joint_entry(project_in(ui), joint);
    entry.recipe = "glue";
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutJoint{joint.frame, entry})));
    ui.settle();
    CHECK_THAT(ui.item("Join/meet: staggered lap").value, Contains("mends one thing"));
}

TEST_CASE("a choice that brings something to mend names it with its mend", "[editor][join]") {
    HeadlessUi ui;
    const auto joint = start_at_joint(ui);
    auto choice = editor::joint_recipe_choices(project_in(ui), joint).back();
    auto entry = editor::joint_entry(project_in(ui), joint);
    entry.recipe = "glue";
    choice.edits = {model::PutJoint{joint.frame, entry}};
    const auto price = editor::price_of(ui.now(), *ui.desk.catalogue, choice);
    REQUIRE(price.warnings.size() == 1);
    CHECK_THAT(price.warnings[0].where, Contains(editor::words_of(joint)));
    CHECK_THAT(price.warnings[0].what, Contains("glue") && Contains("choose one of"));
    choice.edits = {model::PutJoint{"no such frame", entry}};
    CHECK_FALSE(editor::price_of(ui.now(), *ui.desk.catalogue, choice).refused.empty());
}

TEST_CASE("the Join place is drawn for any project, in any window and text size",
          "[editor][join]") {
    for (const auto& [width, height] :
         {std::pair{720.0F, 480.0F}, {1280.0F, 800.0F}, {3840.0F, 2160.0F}}) {
        HeadlessUi ui(width, height);
        editor::run_command(ui.desk, "place.join");
        ui.settle();
        model::Project broken;
        broken.frames = {{.name = "f", .joints = {{.members = {"a", "b"}}}}, {.name = "f"}};
        editor::replace_project(ui.desk, broken, {});
        ui.settle();
        for (const char* scope : {"Join/Frame", "Join/Project", "Join/Joint"}) ui.click(scope);
        editor::replace_project(ui.desk, {}, {});
        start_at_joint(ui);
        for (const char* scope : {"Join/Frame", "Join/Project", "Join/Joint"}) ui.click(scope);
        const auto& row = ui.item("Join/meet: flush");
        CHECK(row.right <= ui.item("View/picture").left);
    }
}

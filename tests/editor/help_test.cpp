#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/first_steps.h"
#include "editor/keys.h"
#include "editor/kit/trade_words.h"
#include "editor/mend_doors.h"
#include "editor/places/cautions.h"
#include "editor/places/section_choice.h"
#include "model/mend/finding_rules.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

using Catch::Contains;
using tests::HeadlessUi;

namespace {

namespace key = editor::key;

void make_narrow(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    const auto& project = editor::project_of(ui.desk);
    std::vector<std::string> members;
    for (const auto& member : project.frames[0].members) members.push_back(member.name);
    const auto change = editor::section_change(ui.now(), *ui.desk.catalogue, project.frames[0].name,
                                               members, "angle 3/4 x 3/4 x 1/8");
    REQUIRE(editor::submit(ui.desk, change));
    ui.settle();
}

void put(HeadlessUi& ui, const model::Edit& edit) {
    REQUIRE(editor::submit(ui.desk, editor::change_of(edit)));
    ui.settle();
}

// As if it came from a file.
void open(HeadlessUi& ui, const model::Project& project) {
    editor::replace_project(ui.desk, project, {});
    ui.settle();
}

// Twice more where its first member is: nothing that takes out one of them mends both findings.
void add_twins(HeadlessUi& ui) {
    auto project = editor::project_of(ui.desk);
    auto& members = project.frames[0].members;
    for (const char* name : {"twin", "second twin"}) {
        auto twin = members[0];
        twin.name = name;
        members.push_back(twin);
    }
    open(ui, project);
}

std::size_t group_of(HeadlessUi& ui, const std::string& code) {
    const auto& groups = ui.now().finding_groups;
    const auto at = std::find_if(groups.begin(), groups.end(), [&](const auto& group) {
        return ui.now().findings[group.findings[0]].code == code;
    });
    if (at == groups.end()) FAIL("nothing of " + code + " is found");
    return static_cast<std::size_t>(at - groups.begin());
}

// Its name; opened, and scrolled to.
std::string open_finding(HeadlessUi& ui, const std::string& code) {
    const auto group = group_of(ui, code);
    for (std::size_t i = 0; i <= group; ++i) editor::open_next(ui.now(), ui.desk.ui.cards);
    ui.settle();
    return "Lay out/finding " + std::to_string(group + 1);
}

// A chest of which the box stands 1/8 in off.
void add_near_chest(HeadlessUi& ui) {
    const auto& frame = ui.now().resolved.frames.at(0);
    model::Nm far = 0;
    for (const auto& piece : ui.now().resolved.pieces)
        far = std::max(far, piece.extents.hi[0] + frame.origin[0]);
    const auto near = engine::Length::from_nm(far + engine::Length::nm_per_inch / 8);
    const auto text = std::to_string(near.mm()) + " mm";
    put(ui, model::PutObstacle{{.name = "chest",
                                .shape = model::BoxObstacle{{text, "0 in", "0 in"},
                                                            {text + " + 9 in", "9 in", "9 in"}}},
                               {}});
}

}  // namespace

TEST_CASE("a finding that is clicked says why, by which rule and from which source",
          "[editor][help]") {
    HeadlessUi ui;
    make_narrow(ui);
    REQUIRE(ui.now().summary.open() > 0);
    CHECK_FALSE(ui.has("Lay out/finding 1 why"));
    ui.click("Lay out/finding 1");
    ui.settle();
    const auto& finding = ui.now().findings[ui.now().finding_groups[0].findings[0]];
    const auto* rule = model::finding_rule(finding.code);
    REQUIRE(rule != nullptr);
    CHECK(ui.item("Lay out/finding 1 why").value == "Why: " + std::string(rule->rule) + ".");
    CHECK(ui.item("Lay out/finding 1 source").value == "Source: " + std::string(rule->source));
    const auto at = ui.item("Lay out/finding 1");
    ui.click_at(at.middle_x(), at.top + 6);
    ui.settle();
    CHECK_FALSE(ui.has("Lay out/finding 1 why"));
}

TEST_CASE("a mend is offered as a button, does what it says, and is one step to undo",
          "[editor][help]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    auto before = editor::project_of(ui.desk);
    before.shop.edge_distance = 0.5;  // no edit takes that, but a file may say it
    open(ui, before);
    ui.click("Lay out/finding 1");
    ui.settle();
    REQUIRE(ui.has("Lay out/finding 1 mend 1"));
    ui.click("Lay out/finding 1 mend 1");
    ui.settle();
    CHECK(editor::project_of(ui.desk).shop.edge_distance == 2.0);
    editor::run_command(ui.desk, "edit.undo");
    CHECK(editor::project_of(ui.desk) == before);
}

TEST_CASE("pointing at a mend tells what it would come to", "[editor][help]") {
    HeadlessUi ui;
    make_narrow(ui);
    ui.click("Lay out/finding 1");
    ui.settle();
    REQUIRE(ui.has("Lay out/finding 1 mend 1"));
    CHECK_FALSE(ui.has("Lay out/finding 1 mend 1 price"));
    const auto at = ui.item("Lay out/finding 1 mend 1");
    ui.move_to(at.middle_x(), at.middle_y());
    ui.settle();
    REQUIRE(ui.has("Lay out/finding 1 mend 1 price"));
    CHECK(ui.item("Lay out/finding 1 mend 1 price").value.find("worked out") == std::string::npos);
}

TEST_CASE("what no button mends leads to the form that holds it", "[editor][help]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    put(ui,
        model::PutObstacle{{.name = "nothing",
                            .shape = model::BoxObstacle{{"90 in", "0", "0"}, {"90 in", "0", "0"}}},
                           {}});
    ui.click("Lay out/finding 1");
    ui.settle();
    REQUIRE(ui.has("Lay out/finding 1 state"));
    ui.click("Lay out/finding 1 door 1");
    ui.settle();
    CHECK(std::holds_alternative<editor::ObstacleForm>(ui.desk.ui.dialog));
}

TEST_CASE("a frame too near to an obstacle may be moved, or stepped over it in a form",
          "[editor][help]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    add_near_chest(ui);
    const auto& findings = ui.now().findings;
    const auto at = std::find_if(findings.begin(), findings.end(),
                                 [](const auto& it) { return it.code == "clearance"; });
    REQUIRE(at != findings.end());
    const auto doors = editor::doors_of(ui.now(), *at);
    REQUIRE_FALSE(doors.empty());
    CHECK(doors[0].words.find("Step over chest") == 0);
    editor::Place place = editor::Place::lay_out;
    doors[0].open(ui.desk.ui.dialog, place);
    CHECK(std::get<editor::StepForm>(ui.desk.ui.dialog).obstacle == "chest");
}

TEST_CASE("a card with no way to try leads to the forms", "[editor][help]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    auto project = editor::project_of(ui.desk);
    project.room.push_back(
        {.name = "chest", .shape = model::BoxObstacle{{"a hand", "0", "0"}, {"9", "9", "9"}}});
    open(ui, project);
    const auto card = open_finding(ui, "formula_error");
    CHECK(ui.item(card + " state").value == "No mend by button here: the forms below lead to it.");
    CHECK(ui.has(card + " door 1"));
}

TEST_CASE("a card whose ways were tried in vain says so", "[editor][help]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    add_twins(ui);
    const auto card = open_finding(ui, "same_place");
    CHECK_THAT(ui.item(card + " state").value, Contains("what was tried leaves it as it is"));
}

TEST_CASE("only the way that is tried next is made for all findings of a card", "[editor][help]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    auto project = editor::project_of(ui.desk);
    project.shop.drills = {"#1"};
    open(ui, project);
    const auto group = group_of(ui, "no_drill");
    REQUIRE(ui.now().finding_groups[group].findings.size() > 1);
    editor::MendBoard board;
    editor::begin_mends(board, ui.now(), true);
    const auto& card = editor::mends_on(board, group, ui.now(), *ui.desk.catalogue, nullptr);
    CHECK(card.tried == 1);
    REQUIRE(card.kept.size() == 1);
    CHECK(card.kept.front().name == "drill #30");
    REQUIRE_FALSE(card.untried.empty());
    for (const auto& next : card.untried) CHECK(next.way.edits.size() == 1);
    CHECK(board.has_more);
}

TEST_CASE("a rule that cannot be otherwise says that it needs no source", "[editor][help]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    add_twins(ui);
    const auto card = open_finding(ui, "same_place");
    CHECK(ui.item(card + " source").value == "It needs no source: it cannot be otherwise");
}

TEST_CASE("numbers of a finding are told as on the tape, and a drill exactly", "[editor][help]") {
    const auto nm = [](double inches) {
        return engine::Length::from_nm(static_cast<model::Nm>(inches * 25'400'000));
    };
    const auto words = [&](const char* name, engine::Length length) {
        return editor::number_words({.numbers = {{name, length}}}, {});
    };
    CHECK(words("depth", nm(0.125)) == "depth 1/8 in");
    CHECK(words("depth", nm(0.24)) == "depth about 1/4 in");
    CHECK(words("depth", nm(0.02)) == "depth less than 1/32 in");
    CHECK(words("length", nm(0)) == "length 0 in");
    CHECK(words("length", nm(-0.5)) == "length -1/2 in");
    CHECK(words("hole", nm(0.257)) == "hole 0.257 in");
    CHECK(words("diameter", nm(0.140625)) == "diameter 9/64 in");
    const engine::TapeStyle metric{.form = engine::TapeForm::millimetre, .decimals = 0};
    CHECK(editor::number_words({.numbers = {{"hole", nm(0.257)}}}, metric) == "hole 6.5278 mm");
    CHECK(editor::number_words({.numbers = {{"depth", nm(0.257)}}}, metric) == "depth about 7 mm");
}

TEST_CASE("findings are gone through and mended by the keyboard alone", "[editor][help]") {
    HeadlessUi ui;
    make_narrow(ui);
    const auto open_before = ui.now().summary.open();
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    ui.press('U', key::left_control);
    ui.settle();
    CHECK(ui.desk.ui.place == editor::Place::lay_out);
    REQUIRE(ui.has("Lay out/finding 1 why"));
    REQUIRE(ui.has("Lay out/finding 1 mend 1"));
    ui.press('U', key::left_control, key::left_shift);
    ui.settle();
    CHECK(ui.now().summary.open() < open_before);
}

TEST_CASE("the words of the trade are in order, explained, and each once", "[editor][help]") {
    const auto words = editor::trade_words();
    CHECK(words.size() >= 31);
    for (std::size_t i = 0; i < words.size(); ++i) {
        CAPTURE(std::string(words[i].word));
        CHECK(words[i].what.back() == '.');
        CHECK(words[i].what.size() > 20);
        if (i > 0) CHECK(words[i - 1].word < words[i].word);
    }
}

TEST_CASE("every word that the design names is among the words of the trade", "[editor][help]") {
    for (const char* word :
         {"member",        "leg",           "heel",   "toe",          "root",          "gauge",
          "pitch",         "edge distance", "grip",   "stack",        "lap",           "gusset",
          "cleat",         "strap",         "splice", "cope",         "mitre",         "shim",
          "kerf",          "end trim",      "offcut", "layout plane", "bay",           "mark",
          "opposite hand", "match-drill",   "pilot",  "tap drill",    "temporary pin", "datum end",
          "square"}) {
        CAPTURE(word);
        CHECK(editor::trade_word(word) != nullptr);
    }
}

TEST_CASE("a word is found in a label whole, however it is written", "[editor][help]") {
    CHECK(editor::trade_word_in("saw kerf")->word == "kerf");
    CHECK(editor::trade_word_in("Gussets of sheet")->word == "gusset");
    CHECK(editor::trade_word_in("off each end")->word == "end trim");
    CHECK(editor::trade_word_in("overlap") == nullptr);
    CHECK(editor::trade_word_in("remarks") == nullptr);
}

TEST_CASE("a label of the trade is explained while the pointer rests on it", "[editor][help]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    REQUIRE(ui.has("Buy/term saw kerf"));
    CHECK_FALSE(ui.has("Buy/explained"));
    const auto at = ui.item("Buy/term saw kerf");
    ui.move_to(at.middle_x(), at.middle_y());
    ui.settle();
    REQUIRE(ui.has("Buy/explained"));
    CHECK(ui.item("Buy/explained").value == "kerf");
}

TEST_CASE("headings of the shop's tables are explained", "[editor][help]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.ui.place = editor::Place::make;
    ui.desk.ui.make.table = editor::ShopTable::drills;
    ui.settle();
    const auto is_heading = [](const auto& item) {
        return item.first.find("Make/drills/term ") == 0;
    };
    CHECK(std::count_if(ui.items().begin(), ui.items().end(), is_heading) >= 2);
}

TEST_CASE("all words of the trade are looked up by typing, arrows and Escape", "[editor][help]") {
    HeadlessUi ui;
    ui.press('H', key::left_control);
    ui.settle();
    REQUIRE(ui.has("Words/shown word"));
    CHECK(ui.item("Words/shown word").value == editor::trade_words()[0].word);
    ui.press(key::down);
    ui.settle();
    CHECK(ui.item("Words/shown word").value == editor::trade_words()[1].word);
    ui.type("blade");
    ui.settle();
    CHECK(ui.item("Words/shown word").value == "kerf");
    ui.press(key::escape);
    ui.settle();
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
}

TEST_CASE("the first steps lead from a frame over the well to the schedules", "[editor][help]") {
    HeadlessUi ui;
    ui.desk.ui.help.has_dismissed_steps = false;
    ui.settle();
    CHECK(ui.item("First steps/sketch state").value == "open");
    ui.click("First steps/sketch");
    ui.settle();
    CHECK(std::holds_alternative<editor::StarterForm>(ui.desk.ui.dialog));
    editor::close_dialog(ui.desk);
    tests::start_box(ui.desk);
    ui.settle();
    CHECK(ui.item("First steps/sketch state").value == "done");
    CHECK(ui.item("First steps/adjust state").value == "open");
    put(ui, model::SurveyWheelWell{.obstacle = "well",
                                   .wall = "200 in",
                                   .start = "0 in",
                                   .length = "30 in",
                                   .height = "9 in",
                                   .reach = "8 in"});
    CHECK(ui.item("First steps/adjust state").value == "done");
    CHECK(ui.item("First steps/export state").value == "open");
    const tests::TemporaryFolder folder;
    REQUIRE(editor::export_to(ui.desk, folder.path()));
    ui.settle();
    CHECK(ui.item("First steps/export state").value == "done");
}

TEST_CASE("without a wheel well the second step speaks of none, and is done all the same",
          "[editor][help]") {
    HeadlessUi ui;
    ui.desk.ui.help.has_dismissed_steps = false;
    tests::start_box(ui.desk);
    ui.settle();
    const auto title = [&] { return std::string(editor::first_steps(ui.now(), {})[1].title); };
    CHECK_THAT(title(), !Contains("well"));
    CHECK(ui.item("First steps/adjust state").value == "open");
    ui.fill("Lay out/width", "30");
    CHECK(ui.item("First steps/adjust state").value == "done");
    put(ui, model::PutObstacle{
                {.name = "chest",
                 .shape = model::BoxObstacle{{"0 in", "0 in", "0 in"}, {"9 in", "9 in", "9 in"}}},
                {}});
    CHECK_THAT(title(), !Contains("well"));
    CHECK(ui.item("First steps/adjust state").value == "open");
    ui.click("First steps/adjust");
    CHECK(ui.has("Lay out/finding 1 why"));
    put(ui, model::RemoveObstacle{"chest"});
    put(ui, model::PutObstacle{{.name = "chest",
                                .shape = model::BoxObstacle{{"200 in", "0 in", "0 in"},
                                                            {"209 in", "9 in", "9 in"}}},
                               {}});
    ui.desk.ui.selection = {};
    ui.settle();
    CHECK(ui.item("First steps/adjust state").value == "done");
}

TEST_CASE("the first steps are put away for good, and brought back by a command",
          "[editor][help]") {
    HeadlessUi ui(1280, 720);
    ui.desk.ui.help.has_dismissed_steps = false;
    ui.settle();
    ui.click("First steps/Hide");
    ui.settle();
    CHECK_FALSE(ui.has("First steps/Hide"));
    CHECK(ui.desk.ui.help.has_dismissed_steps);
    editor::run_command(ui.desk, "view.first_steps");
    ui.settle();
    CHECK(ui.has("First steps/Hide"));
}

TEST_CASE("cautions stand where cutting, drilling and riveting begin", "[editor][help]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.ui.place = editor::Place::make;
    ui.desk.ui.make.table = editor::ShopTable::cuts;
    ui.settle();
    CHECK(ui.has("Make/caution for cutting"));
    ui.desk.ui.make.table = editor::ShopTable::drills;
    ui.settle();
    CHECK(ui.has("Make/caution for drilling"));
    ui.desk.ui.make.table = editor::ShopTable::fasteners;
    ui.settle();
    CHECK(ui.has("Make/caution for riveting"));
    for (const auto work :
         {editor::Work::cutting, editor::Work::drilling, editor::Work::riveting}) {
        CHECK(editor::caution_of(work).further.front().find("maker") != std::string_view::npos);
    }
}

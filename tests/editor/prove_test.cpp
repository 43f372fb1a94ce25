#include "editor/places/prove.h"

#include "editor/check_words.h"
#include "editor/commands.h"
#include "editor/keys.h"
#include "editor/places/consequences.h"
#include "editor/places/place_words.h"
#include "editor/places/section_choice.h"
#include "editor/report_state.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using Catch::Contains;
using editor::Place;
using tests::HeadlessUi;
namespace key = editor::key;

namespace {

std::string words_at(HeadlessUi& ui, Place place) {
    return editor::place_words(ui.now(), place).text;
}

void go_to(HeadlessUi& ui, const char* command) {
    editor::run_command(ui.desk, command);
    ui.settle();
}

const std::string& frame_name(HeadlessUi& ui) { return ui.now().project->frames[0].name; }

// So far behind the box frame, all along it.
void put_ledge_behind(HeadlessUi& ui, const std::string& gap) {
    const std::string from = "depth + (" + gap + ")";
    const model::Obstacle ledge{
        .name = "ledge",
        .shape = model::BoxObstacle{{"0", from, "0"}, {"width", from + " + 10 in", "10 in"}}};
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutObstacle{ledge, {}})));
    ui.settle();
}

// The same frame again, so far to the right of the first one.
void put_second_frame(HeadlessUi& ui, const std::string& gap) {
    auto project = editor::project_of(ui.desk);
    auto second = project.frames[0];
    second.name = "neighbour";
    second.origin = {"width + (" + gap + ")", "0", "0"};
    project.frames.push_back(second);
    editor::replace_project(ui.desk, project, {});
    ui.settle();
}

// With plumb sides, so wide all the way up.
void put_opening(HeadlessUi& ui, const std::string& width) {
    const model::MeasuredOpening opening{.name = "galley",
                                         .height = "height + 1 in",
                                         .widths = {width, width, width},
                                         .diagonals = {"", ""},
                                         .plumb = {"0", "0"}};
    REQUIRE(
        editor::submit(ui.desk, editor::change_of(model::PutOpening{frame_name(ui), opening, {}})));
    ui.settle();
}

// A box of bar that is too narrow for two rivets in every lap.
void start_narrow_box(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    const auto& project = editor::project_of(ui.desk);
    std::vector<std::string> members;
    for (const auto& member : project.frames[0].members) members.push_back(member.name);
    const auto change = editor::section_change(ui.now(), *ui.desk.catalogue, frame_name(ui),
                                               members, "angle 3/4 x 3/4 x 1/8");
    REQUIRE(editor::submit(ui.desk, change));
    ui.settle();
}

}  // namespace

// ---- words on the tabs --------------------------------------------------------------------------

TEST_CASE("an empty project is settled nowhere", "[editor][prove]") {
    HeadlessUi ui;
    ui.settle();
    CHECK(words_at(ui, Place::measure) == "no room yet");
    CHECK(words_at(ui, Place::lay_out) == "to begin");
    for (const auto place : {Place::join, Place::prove, Place::buy, Place::make}) {
        CHECK(words_at(ui, place) == "nothing yet");
        CHECK_FALSE(editor::place_words(ui.now(), place).is_open);
    }
}

TEST_CASE("each tab says what is settled at its place", "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    REQUIRE(ui.now().summary.open() == 0);
    for (const char* tab : {"Lay out", "Join", "Prove"})
        CHECK(ui.item(std::string("Top/state of ") + tab).value == "settled");
    CHECK(ui.item("Top/state of Make").value ==
          std::to_string(ui.now().summary.pieces) + " pieces");
    CHECK_THAT(ui.item("Top/state of Buy").value, Contains(" x "));
    CHECK(ui.item("Top/state of Measure").value == "no room yet");
    put_ledge_behind(ui, "2 in");
    CHECK(ui.item("Top/state of Measure").value == "settled");
}

TEST_CASE("what is open is told at the place where it is mended, and all of it at Prove",
          "[editor][prove]") {
    HeadlessUi ui;
    start_narrow_box(ui);
    const int open = ui.now().summary.open();
    REQUIRE(open > 0);
    CHECK(words_at(ui, Place::join) == std::to_string(open) + " open");
    CHECK(words_at(ui, Place::prove) == std::to_string(open) + " open");
    CHECK(words_at(ui, Place::lay_out) == "settled");
    put_ledge_behind(ui, "-1 in");
    CHECK(words_at(ui, Place::join) == std::to_string(open) + " open");
    CHECK(words_at(ui, Place::prove) == std::to_string(ui.now().summary.open()) + " open");
    CHECK(ui.now().summary.open() > open);
    CHECK(words_at(ui, Place::measure) == "settled");
}

TEST_CASE("the tabs of all places together count every open finding once", "[editor][prove]") {
    HeadlessUi ui;
    start_narrow_box(ui);
    put_ledge_behind(ui, "-1 in");
    for (auto stocks = editor::project_of(ui.desk).stock; auto& one : stocks) {
        one.bars.clear();
        REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutStock{one, one.name})));
    }
    int sum = 0;
    for (const auto& row : editor::place_rows) sum += editor::open_at(ui.now(), row.place);
    CHECK(sum == ui.now().summary.open());
    CHECK_THAT(words_at(ui, Place::buy), Contains("open"));
    CHECK(words_at(ui, Place::make) == "not to cut yet");
}

TEST_CASE("Buy tells the price where every bar has one", "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    auto project = editor::project_of(ui.desk);
    for (auto& stock : project.stock) {
        for (auto& bar : stock.bars) bar.price = 20.5;
    }
    project.shop.currency = "$";
    editor::replace_project(ui.desk, project, {});
    ui.settle();
    REQUIRE(ui.now().summary.bars == 2);
    CHECK(words_at(ui, Place::buy) == "bars $41.00");
    for (auto& stock : project.stock) stock.bars.back().price.reset();
    for (auto& stock : project.stock) stock.bars.front().price.reset();
    editor::replace_project(ui.desk, project, {});
    CHECK_THAT(words_at(ui, Place::buy), Contains(" x "));
}

// ---- checks -------------------------------------------------------------------------------------

TEST_CASE("Prove is gone to by its key, its tab and its command", "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.press('4', key::left_control);
    ui.settle();
    CHECK(ui.desk.ui.place == Place::prove);
    CHECK(ui.has("Prove/Checks"));
    const auto state = editor::state_line(ui.desk, ui.items(), false);
    CHECK_THAT(state, Contains("\"place\":\"prove\"") && Contains("\"sheet\":\"checks\""));
    ui.click("Top/Measure");
    ui.click("Top/Prove");
    CHECK(ui.desk.ui.place == Place::prove);
}

TEST_CASE("a check that passed says that nothing is to mend, one with nothing to look at says so",
          "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    go_to(ui, "place.prove");
    for (const char* check : {"Ends are held", "Joints can be made", "Fasteners and edge distances",
                              "Pieces keep apart", "Bars to cut it from"})
        CHECK(ui.item(std::string("Prove/") + check).value == "nothing to mend");
    CHECK(ui.item("Prove/Fits in the room").value == "no room measured");
    CHECK(ui.item("Prove/Drawers come out").value == "no drawer");
    CHECK(ui.item("Prove/Goes into its opening").value == "no opening measured");
    CHECK(ui.item("Prove/Panels").value == "no panel");
    put_ledge_behind(ui, "2 in");
    CHECK(ui.item("Prove/Fits in the room").value == "nothing to mend");
}

TEST_CASE("strength is said to be unchecked on every sheet", "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    for (const char* sheet : {"prove.checks", "prove.room", "prove.square", "prove.as_built"}) {
        go_to(ui, sheet);
        REQUIRE(ui.has("Prove/not checked"));
        CHECK(ui.item("Prove/not checked").visible);
        CHECK_THAT(ui.item("Prove/not checked").value,
                   Contains("Strength under braking is not checked"));
    }
}

TEST_CASE("what cannot be read is said to be unchecked", "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    go_to(ui, "place.prove");
    CHECK_FALSE(ui.has("Prove/left out"));
    auto project = editor::project_of(ui.desk);
    project.dimensions.push_back({.name = "odd", .formula = "no such thing"});
    editor::replace_project(ui.desk, project, {});
    ui.settle();
    go_to(ui, "place.prove");
    CHECK_THAT(ui.item("Prove/left out").value, Contains("1 thing"));
}

TEST_CASE("a click on a check lists its findings alone and chooses what they concern",
          "[editor][prove]") {
    HeadlessUi ui;
    start_narrow_box(ui);
    put_ledge_behind(ui, "-1 in");
    go_to(ui, "place.prove");
    const auto all = ui.desk.ui.prove.findings.lines.size();
    CHECK(all == ui.now().finding_groups.size());
    ui.click("Prove/Fits in the room");
    ui.settle();
    CHECK(ui.desk.ui.prove.kind == model::CheckKind::room);
    CHECK(ui.desk.ui.prove.findings.lines.size() < all);
    CHECK(editor::has_subject(ui.desk.ui.selection, model::SubjectKind::obstacle, "ledge"));
    ui.click("Prove/Fits in the room");
    ui.settle();
    CHECK_FALSE(ui.desk.ui.prove.kind);
    CHECK(ui.desk.ui.prove.findings.lines.size() == all);
}

TEST_CASE("a finding in the table is chosen, told whole, and searched by what it says",
          "[editor][prove]") {
    HeadlessUi ui;
    start_narrow_box(ui);
    put_ledge_behind(ui, "-1 in");
    go_to(ui, "place.prove");
    ui.click("Prove/finding 1");
    ui.settle();
    CHECK_FALSE(ui.desk.ui.selection.subjects.empty());
    CHECK(ui.has("Prove/told/finding 1"));
    ui.write("Prove/Find", "ledge");
    ui.settle();
    const auto& shown = ui.desk.ui.prove.findings.shown;
    CHECK(shown.size() >= 1);
    CHECK(shown.size() < ui.now().finding_groups.size());
}

TEST_CASE("what is told whole in Prove is mended there by a button", "[editor][prove]") {
    for (const auto& [width, height] : {std::pair{1280.0F, 720.0F}, {1600.0F, 1000.0F}}) {
        HeadlessUi ui(width, height);
        start_narrow_box(ui);
        const int open = ui.now().summary.open();
        go_to(ui, "place.prove");
        ui.click("Prove/finding 1");
        ui.settle();
        CHECK(ui.has("Prove/told/finding 1 why"));
        CHECK(ui.item("Prove/finding 1").visible);
        REQUIRE(ui.has("Prove/told/finding 1 mend 1"));
        ui.click("Prove/told/finding 1 mend 1");
        ui.settle();
        CHECK(ui.desk.ui.place == Place::prove);
        CHECK(ui.now().summary.open() < open);
        ui.press('Z', key::left_control);
        ui.settle();
        CHECK(ui.now().summary.open() == open);
    }
}

TEST_CASE("findings about a piece that is chosen in the view are marked", "[editor][prove]") {
    HeadlessUi ui;
    start_narrow_box(ui);
    const auto& project = editor::project_of(ui.desk);
    const auto& group = ui.now().finding_groups.front();
    const auto about =
        editor::selection_of_subjects(project, ui.now().resolved, group.concerns).pieces;
    REQUIRE_FALSE(about.empty());
    const auto is_marked = [&](const editor::Selection& selection) {
        return editor::is_concerned(project, ui.now().resolved, selection,
                                    editor::selected_pieces(project, ui.now().resolved, selection),
                                    group.concerns);
    };
    CHECK(is_marked({.pieces = {about.front()}, .subjects = {}}));
    CHECK(is_marked({.pieces = {}, .subjects = group.concerns}));
    CHECK_FALSE(is_marked({}));
}

// ---- room ---------------------------------------------------------------------------------------

TEST_CASE("the least clearance of each frame is told and shown in the view", "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    put_ledge_behind(ui, "2 in");
    go_to(ui, "prove.room");
    const auto& rows = ui.desk.ui.prove.room_rows.rows;
    REQUIRE(rows.size() == 1);
    REQUIRE(rows[0].clear);
    // Heads of rivets stand out from the frame's back.
    CHECK(*rows[0].clear < 50.8);
    CHECK(*rows[0].clear > 47.0);
    CHECK(std::abs(rows[0].to[1] - rows[0].from[1]) == Approx(*rows[0].clear).margin(0.01));
    CHECK_FALSE(rows[0].is_too_near());
    CHECK_FALSE(ui.has("View/" + frame_name(ui) + " to ledge"));
    ui.click("Prove/near 1");
    ui.settle();
    CHECK(ui.has("View/" + frame_name(ui) + " to ledge"));
    CHECK(editor::has_subject(ui.desk.ui.selection, model::SubjectKind::obstacle, "ledge"));
    ui.press(key::escape);
    ui.settle();
    CHECK_FALSE(ui.has("View/" + frame_name(ui) + " to ledge"));
}

TEST_CASE("what stands in an obstacle is told with its depth, what is far with how far",
          "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    put_ledge_behind(ui, "-1 in");
    go_to(ui, "prove.room");
    CHECK_THAT(ui.item("Prove/near 1").value, Contains("inside"));
    ui.press('Z', key::left_control);
    put_ledge_behind(ui, "60 in");
    CHECK_THAT(ui.item("Prove/near 1").value, Contains("over 12 1/4 in"));
}

TEST_CASE("two frames tell how far they stand apart", "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    put_second_frame(ui, "2 in");
    go_to(ui, "prove.room");
    const auto& rows = ui.desk.ui.prove.room_rows.rows;
    REQUIRE(rows.size() == 1);
    CHECK(rows[0].is_frame);
    REQUIRE(rows[0].clear);
    CHECK(*rows[0].clear < 50.8);
    CHECK(*rows[0].clear > 44.0);
    ui.click("Prove/near 1");
    ui.settle();
    CHECK(ui.desk.ui.selection.pieces.size() == 2);
    CHECK(ui.has("View/" + frame_name(ui) + " to neighbour"));
}

TEST_CASE("a frame alone without a room has nothing to keep clear of", "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    go_to(ui, "prove.room");
    CHECK(ui.has("Prove/no rows"));
}

// ---- square and as built ------------------------------------------------------------------------

TEST_CASE("each rectangular face has its diagonal, and a click shows both in the view",
          "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    go_to(ui, "prove.square");
    const auto& faces = ui.desk.ui.prove.faces.rows;
    REQUIRE(faces.size() >= 6);
    for (const auto& face : faces) {
        for (const auto& [from, to] : face.diagonals) {
            const double length = std::hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
            CHECK(length == Approx(face.row.diagonal.mm()).margin(0.001));
        }
    }
    ui.click("Prove/face 1");
    ui.settle();
    CHECK(ui.has("View/diagonal of " + faces[0].row.face));
    ui.click("Prove/Room");
    ui.settle();
    CHECK_FALSE(ui.has("View/diagonal of " + faces[0].row.face));
}

TEST_CASE("an opening says by how much the frame goes in, or binds", "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    go_to(ui, "prove.as_built");
    CHECK(ui.has("Prove/no openings"));
    put_opening(ui, "width + 1/2 in");
    const std::string name = "Prove/" + frame_name(ui) + " into galley";
    CHECK_THAT(ui.item(name).value, Contains("goes in with") && Contains("to spare"));
    ui.click(name);
    CHECK(ui.desk.ui.selection.pieces.size() == ui.now().resolved.pieces.size());
    ui.press('Z', key::left_control);
    put_opening(ui, "width - 1 in");
    CHECK_THAT(ui.item(name).value, Contains("binds by"));
    CHECK(ui.now().summary.open() > 0);
}

TEST_CASE("Prove is drawn at every size, on every sheet", "[editor][prove]") {
    for (const auto& [width, height] :
         {std::pair{720.0F, 480.0F}, {1280.0F, 720.0F}, {3840.0F, 2160.0F}}) {
        HeadlessUi ui(width, height);
        start_narrow_box(ui);
        put_ledge_behind(ui, "-1 in");
        put_opening(ui, "width - 1 in");
        for (const char* sheet : {"prove.checks", "prove.room", "prove.square", "prove.as_built"}) {
            INFO(sheet << " at " << width << " x " << height);
            go_to(ui, sheet);
            CHECK(ui.item("Prove/not checked").visible);
            for (const char* choice : {"Checks", "Room", "Square", "As built"})
                CHECK(ui.item(std::string("Prove/") + choice).visible);
        }
    }
}

TEST_CASE("the tables of Make can be chosen in a narrow window", "[editor][prove]") {
    HeadlessUi ui(720.0F, 480.0F);
    tests::start_box(ui.desk);
    go_to(ui, "place.make");
    for (const char* table : {"Cut list", "Drilling", "Fasteners"})
        CHECK(ui.item(std::string("Make/") + table).visible);
    ui.click("Make/Fasteners");
    CHECK(ui.desk.ui.make.table == editor::ShopTable::fasteners);
}

// ---- what is next -------------------------------------------------------------------------------

TEST_CASE("what is next counts what is open and says what waits for it", "[editor][prove]") {
    HeadlessUi ui;
    CHECK_THAT(editor::next_text(ui.now()), Contains("start a frame"));
    tests::start_box(ui.desk);
    CHECK_THAT(editor::next_text(ui.now()), Contains("export") && Contains("measure the room"));
    put_ledge_behind(ui, "2 in");
    CHECK_THAT(editor::next_text(ui.now()), Contains("export") && !Contains("measure"));
    put_opening(ui, "width - 1 in");
    CHECK_THAT(editor::next_text(ui.now()),
               Contains("one opening to fit before the fit is proved"));
}

TEST_CASE("a click on what is next shows where it is", "[editor][prove]") {
    HeadlessUi ui;
    start_narrow_box(ui);
    CHECK_THAT(ui.item("Consequences/show next").value,
               Contains("before the drilling schedule is whole"));
    ui.click("Consequences/show next");
    ui.settle();
    CHECK(ui.desk.ui.place == Place::prove);
    CHECK(ui.desk.ui.prove.kind == model::CheckKind::fasteners);
    CHECK_FALSE(ui.desk.ui.selection.subjects.empty());
}

TEST_CASE("the consequences follow while a dimension is still under the hand", "[editor][prove]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto bar_before = ui.now().summary.bar;
    const auto of_bar = [&] {
        for (const auto& [name, item] : ui.items()) {
            if (name.rfind("Consequences/of bar", 0) == 0) return item.value;
        }
        return std::string();
    };
    const auto shown_before = of_bar();
    const auto at = ui.item("Lay out/width");
    ui.move_to(at.middle_x(), at.middle_y());
    ui.input.button(0, true);
    ui.input.move(at.middle_x() + 90, at.middle_y());
    ui.settle();
    REQUIRE(ui.desk.ui.hand.dragged);
    CHECK(ui.now().summary.bar > bar_before);
    CHECK(of_bar() != shown_before);
    CHECK_THAT(ui.item("Consequences/Last edit").value, Contains("more bar"));
    CHECK(ui.has("Consequences/Next"));
    ui.input.button(0, false);
    ui.settle();
}

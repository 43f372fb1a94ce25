#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"
#include "editor/kit/widgets.h"
#include "editor/places/buy.h"
#include "editor/places/consequences.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using tests::HeadlessUi;
namespace key = editor::key;

TEST_CASE("every place can be gone to by its tab", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.click("Top/Join");
    CHECK(ui.has("Join/Joint"));
    ui.click("Top/Prove");
    CHECK(ui.has("Prove/not checked"));
    ui.click("Top/Buy");
    CHECK(ui.has("Buy/bar 1"));
    ui.click("Top/Make");
    CHECK(ui.has("Make/Cut list"));
    ui.click("Top/Lay out");
    CHECK(ui.has("Lay out/width"));
}

TEST_CASE("a line of the cut list selects its pieces", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.make");
    ui.settle();
    ui.click("Make/cuts/cut 1");
    const auto& row = ui.now().cuts[0];
    CHECK(ui.desk.ui.selection.pieces.size() == row.pieces.size());
}

TEST_CASE("a line of the drilling selects the pieces of its mark and hand", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.make");
    ui.settle();
    ui.click("Make/Drilling");
    ui.click("Make/drills/drill 1");
    const auto& row = ui.now().drills[0];
    const auto chosen = editor::selected_pieces(editor::project_of(ui.desk), ui.now().resolved,
                                                ui.desk.ui.selection);
    REQUIRE_FALSE(chosen.empty());
    CHECK(ui.now().resolved.pieces[chosen[0]].mark == row.mark);
}

TEST_CASE("a bar under Buy selects the piece under the pointer, and beside them all",
          "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    std::vector<model::Index> pieces;
    for (const auto& row : ui.now().bars) {
        if (row.bar == 1) pieces.push_back(row.piece);
    }
    REQUIRE(pieces.size() > 2);
    const auto chosen = [&] {
        return editor::selected_pieces(*ui.now().project, ui.now().resolved, ui.desk.ui.selection);
    };
    const auto bar = ui.item("Buy/bar 1");
    const float middle = (bar.top + bar.bottom) / 2;
    ui.click_at(bar.left + 12, middle);
    CHECK(chosen() == std::vector<model::Index>{pieces[0]});
    ui.click_at(bar.right - 1, middle);
    std::ranges::sort(pieces);
    auto all = chosen();
    std::ranges::sort(all);
    CHECK(all == pieces);
}

TEST_CASE("the bars to be had are typed as a list of lengths", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    const std::string stock = editor::project_of(ui.desk).stock[0].name;
    ui.fill("Buy/bars of " + stock, "16 ft; 25 ft");
    REQUIRE(editor::project_of(ui.desk).stock[0].bars.size() == 2);
    CHECK(editor::project_of(ui.desk).stock[0].bars[1].length == "25 ft");
    ui.fill("Buy/bars of " + stock, "16 ft; many");
    CHECK(editor::project_of(ui.desk).stock[0].bars.size() == 2);
    CHECK_FALSE(ui.desk.ui.offers.trouble.empty());
}

TEST_CASE("bars half typed do not come into the next project", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    const auto boxed = editor::project_of(ui.desk);
    auto other = boxed;
    other.stock[0].bars = {{"3 ft", {}, {}}};
    const std::string field = "Buy/bars of " + boxed.stock[0].name;
    ui.desk.ui.stock_filter.text = "flat";
    ui.desk.ui.hovered_hole = 3;
    SECTION("while the field is active") {
        ui.write(field, "16 ft; 25 ft");
        editor::replace_project(ui.desk, other, {});
        ui.settle();
    }
    SECTION("when they were refused") {
        ui.fill(field, "16 ft; many");
        editor::replace_project(ui.desk, other, {});
        ui.settle();
    }
    CHECK(ui.item(field).value == "3 ft");
    ui.click("View/picture");
    CHECK(editor::project_of(ui.desk) == other);
    CHECK(ui.desk.ui.stock_filter.text.empty());
    CHECK_FALSE(ui.desk.ui.hovered_hole);
}

TEST_CASE("bars half typed are taken when the place is left by key", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    const std::string field = "Buy/bars of " + editor::project_of(ui.desk).stock[0].name;
    ui.write(field, "16 ft; 25 ft");
    ui.press('2', key::left_control);
    CHECK(editor::project_of(ui.desk).stock[0].bars.size() == 2);
    ui.press('5', key::left_control);
    ui.write(field, "16 ft; many");
    ui.press('2', key::left_control);
    ui.press('5', key::left_control);
    CHECK(ui.item(field).value == "16 ft; many");
    CHECK_FALSE(ui.desk.ui.offers.trouble.empty());
}

TEST_CASE("typing the bars keeps the prices of lengths that stay", "[editor][places]") {
    HeadlessUi ui;
    const model::Stock stock{.name = "a", .bars = {{"16 ft", 18.4, 3}, {"20 ft", 22.0, {}}}};
    const auto offers = editor::read_offers(ui.now(), stock, "12 ft;16 ft");
    REQUIRE(offers);
    REQUIRE(offers->size() == 2);
    CHECK((*offers)[1].price == 18.4);
    CHECK((*offers)[1].limit == 3);
}

TEST_CASE("another section for the frame is one step, and undo brings the first one back",
          "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto before = ui.desk.history.now();
    const std::string frame = before->frames[0].name;
    const std::string item = "Lay out/stock " + frame + " " + before->stock[0].name;
    ui.click(item);
    ui.fill(item.substr(0) + " list/Filter", "angle 3/4 x 3/4 x 1/8");
    const auto& after = editor::project_of(ui.desk);
    REQUIRE(after.stock.size() == 2);
    CHECK(after.stock[1].section == "angle 3/4 x 3/4 x 1/8");
    CHECK(after.stock[1].bars.size() == before->stock[0].bars.size());
    for (const auto& member : after.frames[0].members) CHECK(member.stock == after.stock[1].name);
    ui.press('Z', key::left_control);
    CHECK(editor::project_of(ui.desk) == *before);
}

TEST_CASE("a smaller rivet for all joints is chosen from the catalogue", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.click("Lay out/Fastener");
    ui.click("Lay out/Fastener list/blind rivet 3/32");
    CHECK(editor::project_of(ui.desk).shop.fastener == "blind rivet 3/32");
    CHECK_THAT(ui.now().fasteners.at(0).fastener, Catch::StartsWith("blind rivet 3/32"));
    ui.press('Z', key::left_control);
    CHECK(editor::project_of(ui.desk).shop.fastener.empty());
}

TEST_CASE("another section for chosen members leaves the others", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.ui.selection = editor::selection_of(editor::project_of(ui.desk), ui.now().resolved,
                                                std::vector<model::Index>{0});
    ui.settle();
    ui.click("Piece/stock of the chosen");
    ui.fill("Piece/stock of the chosen list/Filter", "flat 1 x 1/8");
    const auto& frame = editor::project_of(ui.desk).frames[0];
    int changed = 0;
    for (const auto& member : frame.members) changed += member.stock == "flat 1 x 1/8" ? 1 : 0;
    CHECK(changed == 1);
}

TEST_CASE("the bar along the bottom says what the last edit changed", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.fill("Lay out/width", "25");
    const auto text = editor::last_edit_text(ui.desk);
    CHECK_THAT(text, Catch::Contains("width"));
    CHECK_THAT(text, Catch::Contains("x-rails 1 in longer"));
    CHECK_THAT(text, Catch::Contains("more bar"));
    CHECK(ui.item("Consequences/Last edit").value == text);
}

TEST_CASE("every place is drawn in a small and in a large window", "[editor][places]") {
    for (const auto& [width, height] :
         {std::pair{720.0F, 480.0F}, {1024.0F, 640.0F}, {3840.0F, 2160.0F}}) {
        HeadlessUi ui(width, height);
        tests::start_box(ui.desk);
        ui.desk.ui.selection = editor::selection_of(editor::project_of(ui.desk), ui.now().resolved,
                                                    std::vector<model::Index>{0});
        for (const char* place : {"place.measure", "place.lay_out", "place.join", "place.prove",
                                  "place.buy", "place.make"}) {
            editor::run_command(ui.desk, place);
            ui.settle();
            CHECK(ui.has("View/picture"));
        }
    }
}

TEST_CASE("nothing in the top bar lies over anything else, in any window", "[editor][places]") {
    for (float width = 720; width < 1700; width += 35) {
        HeadlessUi ui(width, 480);
        tests::start_box(ui.desk);
        ui.settle();
        INFO("width " << width);
        std::vector<editor::ItemRecord> items;
        for (const char* name : {"Project", "Edit", "Room", "Frame", "View", "Measure", "Lay out",
                                 "Join", "Prove", "Buy", "Make", "Undo", "Redo", "Export"}) {
            items.push_back(ui.item("Top/" + std::string(name)));
        }
        for (std::size_t i = 1; i < items.size(); ++i) {
            CHECK(items[i].left >= items[i - 1].right - 0.5F);
        }
        CHECK(items.back().right <= width);
        CHECK(ui.item("Top/title").right <= ui.item("Top/Measure").left);
    }
}

TEST_CASE("undo, redo and export can be clicked in the smallest window", "[editor][places]") {
    HeadlessUi ui(720, 480);
    tests::start_box(ui.desk);
    ui.settle();
    ui.click("Top/Undo");
    CHECK(editor::project_of(ui.desk).frames.empty());
    ui.click("Top/Redo");
    CHECK(editor::project_of(ui.desk).frames.size() == 1);
    ui.click("Top/Export");
    CHECK(std::holds_alternative<editor::FileBrowser>(ui.desk.ui.dialog));
}

TEST_CASE("two names that differ only before signs of the number are two things to click",
          "[editor][places]") {
    HeadlessUi ui;
    for (const char* name : {"tank ##1", "tank ###1", "bin ###1"}) {
        REQUIRE(editor::submit(
            ui.desk,
            editor::change_of(model::PutObstacle{
                {.name = name, .shape = model::BoxObstacle{{"0", "0", "0"}, {"1", "1", "1"}}},
                {}})));
    }
    editor::run_command(ui.desk, "place.measure");
    ui.settle();
    for (const char* name : {"tank ##1", "tank ###1", "bin ###1"}) {
        const auto item = ui.item(std::string("Measure/obstacle ") + name);
        // All of it stands there.
        CHECK(item.right - item.left > editor::size_of_text(name, editor::Type::text).x);
        ui.click(std::string("Measure/obstacle ") + name);
        const auto* form = std::get_if<editor::ObstacleForm>(&ui.desk.ui.dialog);
        REQUIRE(form != nullptr);
        CHECK(form->obstacle.name == name);
        ui.press(key::escape);
    }
}

TEST_CASE("every place has its command, which goes there", "[editor][places]") {
    HeadlessUi ui;
    for (const auto& row : editor::place_rows) {
        INFO(row.name);
        REQUIRE(editor::find_command(row.command) != nullptr);
        editor::run_command(ui.desk, row.command);
        CHECK(ui.desk.ui.place == row.place);
        CHECK(editor::place_named(row.name) == row.place);
        CHECK(&editor::row_of(row.place) == &row);
    }
}

TEST_CASE("a list of sections stays within the window, with its filter and its rows",
          "[editor][places]") {
    for (const auto& [width, height] :
         {std::pair{720.0F, 480.0F}, {1024.0F, 640.0F}, {1600.0F, 1000.0F}}) {
        HeadlessUi ui(width, height);
        tests::start_box(ui.desk);
        ui.desk.ui.selection = editor::selection_of(editor::project_of(ui.desk), ui.now().resolved,
                                                    std::vector<model::Index>{0});
        ui.settle();
        for (const char* name : {"Piece/stock of the chosen", "Lay out/Fastener"}) {
            if (!ui.item(name).visible) continue;
            INFO(name << " at " << width << " x " << height);
            ui.click(name);
            const std::string list = std::string(name) + " list/";
            const bool has_filter = ui.has(list + "Filter");
            if (has_filter) {
                CHECK(ui.item(list + "Filter").top >= 0.0F);
                CHECK(ui.item(list + "Filter").bottom <= height);
            }
            const std::string row = has_filter ? "flat 1 x 1/8" : "rivet to suit the thickness";
            if (has_filter) ui.write(list + "Filter", row);
            REQUIRE(ui.has(list + row));
            CHECK(ui.item(list + row).visible);
            CHECK(ui.item(list + row).top >= 0.0F);
            CHECK(ui.item(list + row).bottom <= height);
            ui.press(key::escape);
        }
    }
}

TEST_CASE("a pulled edge keeps its place and leaves room for the view", "[editor][places]") {
    HeadlessUi ui;
    ui.drag("Left edge/edge", 90, 0);
    CHECK(ui.desk.ui.left_width == Approx(420).margin(3));
    ui.drag("Left edge/edge", 4000, 0);
    const auto& view = ui.item("View/picture");
    CHECK(view.right - view.left > 200);
}

TEST_CASE("a project that is full of faults is drawn as it is", "[editor][places]") {
    HeadlessUi ui;
    model::Project broken;
    broken.dimensions = {{.name = "a", .formula = "b"}, {.name = "b", .formula = "a"}};
    broken.frames = {{.name = "f",
                      .planes = {{"p", model::Axis::x, "nowhere"}},
                      .members = {{.name = "m", .stock = "none", .on = {"p", "q"}}}},
                     {.name = "f"}};
    broken.stock = {{.name = "s", .section = "no such section"}};
    editor::replace_project(ui.desk, broken, {});
    for (const char* place :
         {"place.measure", "place.lay_out", "place.join", "place.buy", "place.make"}) {
        editor::run_command(ui.desk, place);
        ui.settle();
    }
    CHECK(ui.now().summary.open() > 0);
}

TEST_CASE("a member is chosen by its name, and an unknown one is none", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto& project = editor::project_of(ui.desk);
    const auto& member = project.frames[0].members[0].name;
    CHECK_FALSE(editor::selection_of_member(project, ui.now().resolved, member).pieces.empty());
    CHECK(editor::selection_of_member(project, ui.now().resolved, "frob").pieces.empty());
    CHECK(editor::selection_of_member(project, ui.now().resolved, "").pieces.empty());
}

TEST_CASE("where there is no room for all, the places keep theirs and undo is in the menu",
          "[editor][places]") {
    HeadlessUi ui(480, 480);
    tests::start_box(ui.desk);
    ui.settle();
    CHECK_FALSE(ui.has("Top/Undo"));
    CHECK(ui.item("Top/Measure").left >= ui.item("Top/View").right);
    ui.click("Top/Buy");
    CHECK(ui.desk.ui.place == editor::Place::buy);
    ui.click("Top/Edit");
    CHECK(ui.item("Top/Edit/edit.undo").enabled);
}

TEST_CASE("weight is shown along the bottom and told as a difference", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto before = ui.now().summary.weight_kg;
    CHECK(before > 1.0);
    CHECK(before < 10.0);
    ui.fill("Lay out/width", "48");
    CHECK(ui.now().summary.weight_kg > before);
    CHECK_THAT(editor::last_edit_text(ui.desk), Catch::Matches(".*\\+[0-9.]+ lb.*"));
}

TEST_CASE("a long difference of bar is told in feet and inches", "[editor][places]") {
    const auto project = std::make_shared<const model::Project>();
    editor::Figures before{.project = project};
    editor::Figures after{.project = project};
    after.summary.bar = engine::Length::from_nm(310 * engine::Length::nm_per_inch);
    CHECK(editor::change_text(before, after) == "25 ft 10 in more bar");
}

TEST_CASE("what is to mend is counted alike in every place", "[editor][places]") {
    editor::Summary summary;
    CHECK(editor::count_words(summary).empty());
    summary.notes = 1;
    CHECK(editor::count_words(summary) == "1 note");
    summary.errors = 20;
    summary.warnings = 4;
    CHECK(editor::count_words(summary) == "24 to mend, 1 note");
    HeadlessUi ui;
    tests::start_box(ui.desk);
    auto stock = editor::project_of(ui.desk).stock[0];
    stock.bars.clear();
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutStock{stock, stock.name})));
    ui.settle();
    const auto words = editor::count_words(ui.now().summary);
    CHECK(ui.item("Consequences/findings").value == words);
    CHECK(ui.item("Lay out/findings heading").value == words);
}

TEST_CASE("bars from which nothing could be cut are refused at the field", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    const auto before = ui.desk.history.now();
    for (const char* length : {"0", "-3", "10 mm", "1 in"}) {
        INFO(length);
        ui.fill("Buy/bars of " + before->stock[0].name, length);
        CHECK(ui.desk.history.now() == before);
        CHECK_THAT(ui.desk.ui.offers.trouble, Catch::Contains("nothing"));
    }
}

TEST_CASE("stock and rivets can be chosen however many dimensions and findings there are",
          "[editor][places]") {
    for (const auto& [width, height] : {std::pair{1600.0F, 1000.0F}, {1024.0F, 700.0F}}) {
        HeadlessUi ui(width, height);
        tests::start_frame(ui.desk, editor::StarterKind::stepped);
        auto shop = editor::project_of(ui.desk).shop;
        shop.fastener = "blind rivet 3/16";
        REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetShop{shop})));
        ui.settle();
        REQUIRE(ui.now().findings.size() > 3);
        const auto& project = editor::project_of(ui.desk);
        CHECK(ui.item("Lay out/Fastener").visible);
        const auto& stock =
            ui.item("Lay out/stock " + project.frames[0].name + " " + project.stock[0].name);
        CHECK(stock.visible);
        const auto& card = ui.item("Lay out/finding 1");
        CHECK((stock.bottom < card.top || card.bottom < stock.top));
        CHECK(ui.item("Lay out/" + project.dimensions[0].name).visible);
    }
}

TEST_CASE("kerf, end trim and spares are changed under Buy, each as one step", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    const auto before = ui.desk.history.now();
    ui.fill("Buy/saw kerf", "1/8 in");
    CHECK(editor::project_of(ui.desk).shop.kerf == "1/8 in");
    ui.fill("Buy/off each end", "3/4 in");
    CHECK(editor::project_of(ui.desk).shop.end_trim == "3/4 in");
    ui.fill("Buy/spare fasteners", "20");
    CHECK(editor::project_of(ui.desk).shop.spare_percent == 20.0);
    for (int i = 0; i < 3; ++i) ui.press('Z', key::left_control);
    CHECK(editor::project_of(ui.desk) == *before);
}

TEST_CASE("a saw setting half typed is taken when its place is left by key", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    ui.write("Buy/saw kerf", "1/16 in");
    ui.press('6', key::left_control);
    CHECK(editor::project_of(ui.desk).shop.kerf == "1/16 in");
}

TEST_CASE("a saw setting that cannot be is refused at its field", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    const auto before = ui.desk.history.now();
    for (const auto& [field, text] :
         {std::pair{"saw kerf", "-1/8 in"}, {"off each end", "wide"}, {"spare fasteners", "-5"}}) {
        INFO(field);
        ui.fill(std::string("Buy/") + field, text);
        CHECK(ui.desk.history.now() == before);
        CHECK_FALSE(ui.desk.ui.saw.trouble.empty());
    }
}

TEST_CASE("what is left of each bar stands beside it under Buy", "[editor][places]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    CHECK_THAT(ui.item("Buy/bar 1").value, Catch::EndsWith("left"));
}

TEST_CASE("the members that a cut goes to can be read in a narrow window", "[editor][places]") {
    // At 800 the panel is as narrow as with larger text at 1024.
    for (const float width : {800.0F, 1024.0F, 1600.0F}) {
        HeadlessUi ui(width, 700);
        tests::start_box(ui.desk);
        editor::run_command(ui.desk, "place.make");
        ui.settle();
        const auto& members = ui.item("Make/cuts/cut 1/goes to");
        CHECK(members.right - members.left > 100);
    }
}

TEST_CASE("the work on a hole and what it meets can be read whole", "[editor][places]") {
    HeadlessUi ui;
    int read = 0;
    for (const char* sample : {"tool_cabinet.json", "work_counter.json", "mixed_bench.json",
                               "overhead_locker.json", "parts_box.json"}) {
        REQUIRE(editor::open_file(ui.desk, std::filesystem::path(BARWRIGHT_SAMPLES) / sample));
        const auto& now = ui.now();
        for (const auto& row : now.drills) {
            if (row.operation == model::HoleOperation::drill) continue;
            const auto piece = now.resolved.holes[row.pattern_hole].piece;
            ui.desk.ui.selection =
                editor::selection_of(*now.project, now.resolved, std::vector<model::Index>{piece});
            ui.settle();
            const std::string hole = std::to_string(row.hole);
            CHECK(ui.item("Piece/holes/work " + hole).right <
                  ui.item("Piece/holes/meets " + hole).left);
            CHECK(ui.item("Piece/holes/meets " + hole).right <= 1600);
            ++read;
            break;
        }
    }
    CHECK(read > 0);
}

TEST_CASE("a button that opens a list shortens its text rather than lose its arrow",
          "[editor][places]") {
    HeadlessUi ui;
    const std::string arrow = "\xE2\x96\xBE";
    CHECK_THAT(editor::text_with_arrow("angle 1 1/4 x 1 1/4 x 3/16", 120), Catch::EndsWith(arrow));
    CHECK(editor::size_of_text(editor::text_with_arrow("angle 1 1/4 x 1 1/4 x 3/16", 120),
                               editor::Type::text)
              .x < 120);
    CHECK_THAT(editor::text_with_arrow("flat", 120), Catch::StartsWith("flat "));
}

TEST_CASE("the work of every drilled hole can be read in a narrow window", "[editor][places]") {
    for (const float width : {800.0F, 1600.0F}) {
        HeadlessUi ui(width, 700);
        tests::start_box(ui.desk);
        editor::run_command(ui.desk, "place.make");
        ui.settle();
        ui.click("Make/Drilling");
        const auto& work = ui.item("Make/drills/drill 2/work");
        CHECK(work.visible);
        CHECK(work.right < ui.item("View/picture").left);
    }
}

#include "editor/places/sorted_table.h"

#include "editor/commands.h"
#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>

using editor::SortKey;
using tests::HeadlessUi;
namespace key = editor::key;

namespace {

void open_cut_list(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "make.cuts");
    ui.settle();
}

std::vector<double> lengths_shown(HeadlessUi& ui) {
    std::vector<double> lengths;
    for (const auto line : ui.desk.ui.make.cuts.shown)
        lengths.push_back(ui.now().cuts[line].length.mm());
    return lengths;
}

}  // namespace

TEST_CASE("numbers sort by their size and words by their letters and the numbers in them",
          "[editor][tables]") {
    CHECK(editor::is_before(SortKey{9.0}, SortKey{10.0}));
    CHECK_FALSE(editor::is_before(SortKey{10.0}, SortKey{9.0}));
    CHECK(editor::is_before(SortKey{"A2"}, SortKey{"A10"}));
    CHECK_FALSE(editor::is_before(SortKey{"A10"}, SortKey{"A2"}));
    CHECK(editor::is_before(SortKey{"a9"}, SortKey{"B1"}));
    CHECK(editor::is_before(SortKey{"rail"}, SortKey{"rail 2"}));
    CHECK_FALSE(editor::is_before(SortKey{"Rail"}, SortKey{"rail"}));
    CHECK_FALSE(editor::is_before(SortKey{"rail"}, SortKey{"Rail"}));
    CHECK(editor::is_before(SortKey{"99999999999999999998"}, SortKey{"99999999999999999999"}));
}

TEST_CASE("a line is found by words of any column, in any order, large or small",
          "[editor][tables]") {
    CHECK(editor::is_found("A1 Post left 29 3/4", ""));
    CHECK(editor::is_found("A1 Post left 29 3/4", "  "));
    CHECK(editor::is_found("A1 Post left 29 3/4", "3/4 post"));
    CHECK_FALSE(editor::is_found("A1 Post left 29 3/4", "post right"));
}

TEST_CASE("lines that are alike in a column keep the order in which they came",
          "[editor][tables]") {
    editor::TableOrder order;
    order.column = 0;
    const auto lines = [] {
        return std::vector<editor::TableLine>{
            {"c", {2.0}}, {"a", {1.0}}, {"b", {2.0}}, {"d", {1.0}}};
    };
    editor::bring_up_to_date(order, {1, nullptr}, lines);
    CHECK(order.shown == std::vector<std::size_t>{1, 3, 0, 2});
    order.is_downward = true;
    editor::bring_up_to_date(order, {1, nullptr}, lines);
    CHECK(order.shown == std::vector<std::size_t>{0, 2, 1, 3});
    order.column.reset();
    editor::bring_up_to_date(order, {1, nullptr}, lines);
    CHECK(order.shown == std::vector<std::size_t>{0, 1, 2, 3});
}

TEST_CASE("a click on a column's head sorts upward, then downward, then not at all",
          "[editor][tables]") {
    HeadlessUi ui;
    open_cut_list(ui);
    const auto as_it_comes = ui.desk.ui.make.cuts.shown;
    REQUIRE(as_it_comes.size() > 2);
    ui.click("Make/cuts/head Length");
    ui.settle();
    CHECK(ui.item("Make/cuts/head Length").value == "upward");
    auto lengths = lengths_shown(ui);
    CHECK(std::ranges::is_sorted(lengths));
    CHECK(lengths.front() < lengths.back());
    ui.click("Make/cuts/head Length");
    ui.settle();
    CHECK(ui.item("Make/cuts/head Length").value == "downward");
    lengths = lengths_shown(ui);
    CHECK(std::ranges::is_sorted(lengths, std::ranges::greater{}));
    ui.click("Make/cuts/head Length");
    ui.settle();
    CHECK(ui.desk.ui.make.cuts.shown == as_it_comes);
}

TEST_CASE("the field above a table leaves only lines that hold all its words", "[editor][tables]") {
    HeadlessUi ui;
    open_cut_list(ui);
    const auto all = ui.now().cuts.size();
    ui.write("Make/cuts/Find", "post");
    ui.settle();
    const auto& shown = ui.desk.ui.make.cuts.shown;
    REQUIRE_FALSE(shown.empty());
    CHECK(shown.size() < all);
    for (const auto line : shown) CHECK_THAT(ui.now().cuts[line].members, Catch::Contains("post"));
    CHECK(ui.item("Make/cuts/Find count").value ==
          std::to_string(shown.size()) + " of " + std::to_string(all));
    ui.write("Make/cuts/Find", "no such thing");
    ui.settle();
    CHECK(shown.empty());
    CHECK_FALSE(ui.has("Make/cuts/cut 1"));
}

TEST_CASE("a search is that of one project", "[editor][tables]") {
    HeadlessUi ui;
    open_cut_list(ui);
    ui.write("Make/cuts/Find", "post");
    editor::replace_project(ui.desk, editor::project_of(ui.desk), {});
    ui.settle();
    CHECK(ui.desk.ui.make.cuts.search.empty());
    CHECK(ui.desk.ui.make.cuts.shown.size() == ui.now().cuts.size());
}

TEST_CASE("with Ctrl a line is added and taken away, with Shift all lines between",
          "[editor][tables]") {
    HeadlessUi ui;
    open_cut_list(ui);
    const auto& cuts = ui.now().cuts;
    const auto& chosen = ui.desk.ui.selection.pieces;
    ui.click("Make/cuts/cut 1");
    CHECK(chosen.size() == cuts[0].pieces.size());
    const auto click_with = [&](int modifier, const char* name) {
        ui.input.key(modifier, true);
        ui.frame();
        ui.click(name);
        ui.input.key(modifier, false);
        ui.settle();
    };
    click_with(key::left_control, "Make/cuts/cut 3");
    CHECK(chosen.size() == cuts[0].pieces.size() + cuts[2].pieces.size());
    click_with(key::left_control, "Make/cuts/cut 3");
    CHECK(chosen.size() == cuts[0].pieces.size());
    ui.click("Make/cuts/cut 1");
    click_with(key::left_shift, "Make/cuts/cut 3");
    CHECK(chosen.size() == cuts[0].pieces.size() + cuts[1].pieces.size() + cuts[2].pieces.size());
}

TEST_CASE("what is chosen elsewhere is scrolled to in the table", "[editor][tables]") {
    HeadlessUi ui(1600, 700);
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "make.drilling");
    ui.settle();
    const auto& drills = ui.now().drills;
    REQUIRE(drills.size() > 20);
    const std::string last = "Make/drills/drill " + std::to_string(drills.size());
    REQUIRE_FALSE(ui.has(last));
    // The mark whose first line stands furthest down.
    std::size_t furthest = 0;
    for (std::size_t i = 0; i < drills.size(); ++i) {
        const auto first = std::ranges::find_if(drills, [&](const model::DrillRow& row) {
            return row.mark == drills[i].mark && row.hand == drills[i].hand;
        });
        furthest = std::max(furthest, static_cast<std::size_t>(first - drills.begin()));
    }
    const std::string name = "Make/drills/drill " + std::to_string(furthest + 1);
    for (model::Index i = 0; i < ui.now().resolved.pieces.size(); ++i) {
        const auto& piece = ui.now().resolved.pieces[i];
        if (piece.mark != drills[furthest].mark || piece.hand != drills[furthest].hand) continue;
        ui.desk.ui.selection =
            editor::selection_of(editor::project_of(ui.desk), ui.now().resolved, {i});
    }
    ui.settle();
    REQUIRE(ui.has(name));
    CHECK(ui.item(name).visible);
}

TEST_CASE("the drilling table says beside a mark how many pieces are drilled so",
          "[editor][tables]") {
    HeadlessUi ui(1600, 1000);
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "make.drilling");
    ui.settle();
    const auto& drills = ui.now().drills;
    std::size_t many = 0;
    for (std::size_t i = 0; i < drills.size(); ++i) {
        const std::string line = "Make/drills/drill " + std::to_string(i + 1);
        if (!ui.has(line)) continue;
        CAPTURE(line);
        CHECK(ui.has(line + "/pieces") == (drills[i].pieces > 1));
        if (drills[i].pieces < 2) continue;
        ++many;
        CHECK(ui.item(line + "/pieces").value == "x" + std::to_string(drills[i].pieces));
    }
    CHECK(many > 0);
}

TEST_CASE("the drilling table is searched by all that its rows show beside a mark",
          "[editor][tables]") {
    HeadlessUi ui(1600, 1000);
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "make.drilling");
    ui.settle();
    const auto& drills = ui.now().drills;
    const auto count_of = [&](const auto& holds) {
        return static_cast<std::size_t>(std::ranges::count_if(drills, holds));
    };
    const auto opposite =
        count_of([](const model::DrillRow& row) { return row.hand == model::Hand::opposite; });
    REQUIRE(opposite > 0);
    REQUIRE(opposite < drills.size());
    auto& order = ui.desk.ui.make.drills;
    ui.write("Make/drills/Find", "opp.");
    ui.settle();
    CHECK(order.shown.size() == opposite);
    const auto most =
        std::ranges::max_element(drills, {}, [](const auto& row) { return row.pieces; })->pieces;
    const auto drilled_so =
        count_of([&](const model::DrillRow& row) { return row.pieces == most; });
    REQUIRE(most > 1);
    REQUIRE(drilled_so < drills.size());
    ui.write("Make/drills/Find", "x" + std::to_string(most));
    ui.settle();
    CHECK(order.shown.size() == drilled_so);
}

TEST_CASE("a table is searched, sorted and gone through by the keyboard alone",
          "[editor][tables]") {
    HeadlessUi ui;
    open_cut_list(ui);
    auto& order = ui.desk.ui.make.cuts;
    ui.press(key::down);
    ui.settle();
    CHECK(order.anchor == order.shown[0]);
    ui.press(key::down);
    ui.settle();
    CHECK(order.anchor == order.shown[1]);
    CHECK(ui.desk.ui.selection.pieces.size() == ui.now().cuts[order.shown[1]].pieces.size());
    ui.press(key::up);
    ui.press(key::up);
    ui.settle();
    CHECK(order.anchor == order.shown[0]);
    for (std::size_t column = 0; column < 3; ++column) {
        editor::run_command(ui.desk, "table.sort");
        ui.settle();
        CHECK(order.column == column);
    }
    editor::run_command(ui.desk, "table.turn");
    ui.settle();
    CHECK(order.is_downward);
    CHECK(std::ranges::is_sorted(lengths_shown(ui), std::ranges::greater{}));
    ui.press('L', key::left_control);
    ui.settle();
    ui.type("post");
    ui.settle();
    CHECK(order.search == "post");
}

TEST_CASE("every column of every table can be sorted by its head", "[editor][tables]") {
    for (const float width : {1600.0F, 800.0F}) {
        HeadlessUi ui(width, 700);
        tests::start_frame(ui.desk, editor::StarterKind::stepped);
        for (const auto& [command, table] : {std::pair{"make.cuts", "Make/cuts/"},
                                             {"make.drilling", "Make/drills/"},
                                             {"make.fasteners", "Make/joined/"},
                                             {"prove.square", "Prove/"}}) {
            INFO(command << " at " << width);
            editor::run_command(ui.desk, command);
            ui.settle();
            std::vector<std::string> heads;
            for (const auto& [name, item] : ui.items()) {
                if (name.rfind(std::string(table) + "head ", 0) == 0) heads.push_back(name);
            }
            REQUIRE(heads.size() >= 3);
            for (const auto& head : heads) {
                if (!ui.item(head).visible) continue;
                ui.click(head);
                ui.settle();
                CHECK(ui.item(head).value == "upward");
            }
        }
    }
}

TEST_CASE("a line of the fasteners selects the pieces that they hold together",
          "[editor][tables]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "make.fasteners");
    ui.settle();
    ui.click("Make/joined/fasteners 1");
    const auto& line = ui.desk.ui.make.joined.lines.at(0);
    CHECK(ui.desk.ui.selection.pieces.size() == line.pieces.size());
    CHECK(line.pieces.size() == 2);
    CHECK(line.count == line.wanted);
    CHECK_THAT(line.fastener, Catch::StartsWith("blind rivet"));
    model::Index set = 0;
    for (const auto& one : ui.desk.ui.make.joined.lines) set += one.count;
    CHECK(set == ui.now().resolved.fasteners.size());
}

// From whom it is bought, in the window.
#include "editor/buy_run.h"
#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"
#include "editor/open_project.h"
#include "editor/places/place_words.h"
#include "editor/prices.h"
#include "model/buying/buying_files.h"

#include "tests/editor/at_buy.h"
#include "tests/editor/command_run.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <string>
#include <vector>

using tests::HeadlessUi;
using tests::open_with_suppliers;
using tests::run;
using tests::text_of;
using tests::write;
using tests::yard_list;

namespace fs = std::filesystem;

TEST_CASE("suppliers stand side by side with what all of it costs there", "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_side_by_side"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    const auto yard = ui.item("Buy/suppliers/sum of yard").value;
    const auto dear = ui.item("Buy/suppliers/sum of dear").value;
    CHECK(yard.find("crowns") != std::string::npos);
    CHECK(yard != dear);
    CHECK(ui.item("Buy/suppliers/sum of as stated").value != yard);
}

TEST_CASE("the supplier that is chosen sells the bars, in one step", "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_choose"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    ui.click("Buy/suppliers/yard");
    CHECK(editor::project_of(ui.desk).shop.supplier == "yard");
    for (const auto& bar : ui.now().saw) CHECK(bar.price == 3000);
    // In the currency of the list, whatever the shop's is.
    REQUIRE(editor::project_of(ui.desk).shop.currency != "crowns");
    CHECK(ui.item("Buy/verdict").value.find(" crowns") != std::string::npos);
    CHECK(editor::place_words(ui.now(), editor::Place::buy).text.find(" crowns") !=
          std::string::npos);
    ui.press('Z', editor::key::left_control);
    CHECK(editor::project_of(ui.desk).shop.supplier.empty());
    for (const auto& bar : ui.now().saw) CHECK(bar.price != 3000);
}

TEST_CASE("bars that the seller cuts in half are told whole, in the heading as in the table",
          "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_halves"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    const auto stock = editor::project_of(ui.desk).stock[0];
    write(scratch.path / "yard.csv",
          yard_list(stock, "30") + "longest brought home,10 ft,\ncutting in half,,2\n");
    const model::Supplier yard{
        .name = "yard", .prices = "yard.csv", .way = model::WayHome::fetched};
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutSupplier{yard, "yard"})));
    editor::read_prices_again(ui.desk);
    ui.settle();
    ui.click("Buy/suppliers/yard");
    editor::buy_facts_now(ui.desk);
    ui.settle();
    const auto* facts = editor::buy_facts(ui.desk);
    REQUIRE(facts != nullptr);
    const auto& lines = facts->chosen()->estimate->lines;
    REQUIRE_FALSE(lines.empty());
    CHECK(lines[0].size == "20 ft");
    CHECK(lines[0].note.find("cut in half by the seller") != std::string::npos);
    CHECK(ui.now().summary.bars == lines[0].count);
    CHECK(ui.item("Buy/taken of " + stock.name).value ==
          std::to_string(lines[0].count) + " x 20 ft in halves");
}

TEST_CASE("a list that another program has changed is read when the window comes back",
          "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_again"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    ui.click("Buy/suppliers/yard");
    write(scratch.path / "yard.csv", yard_list(editor::project_of(ui.desk).stock[0], "31.50"));
    editor::read_prices_again(ui.desk);
    ui.settle();
    for (const auto& bar : ui.now().saw) CHECK(bar.price == 3150);
}

TEST_CASE("a list that cannot be read says where, and the stock's own bars are planned with",
          "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_broken"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    write(scratch.path / "yard.csv", yard_list(editor::project_of(ui.desk).stock[0], "1.2.3.4"));
    editor::read_prices_again(ui.desk);
    ui.settle();
    editor::buy_facts_now(ui.desk);
    ui.settle();
    CHECK(ui.item("Buy/suppliers/sum of yard").value.find("yard.csv") != std::string::npos);
    ui.click("Buy/suppliers/yard");
    CHECK(ui.now().summary.bars > 0);
    const auto& findings = ui.now().findings;
    const auto told = std::ranges::find(findings, "price_list_not_read", &model::Finding::code);
    REQUIRE(told != findings.end());
    CHECK(told->what.find("yard.csv, line 3, column price") == 0);
    REQUIRE(editor::save_to(ui.desk, scratch.path / "box.json"));
    const auto refused =
        run({"buy", (scratch.path / "box.json").string(), "--out", scratch.path.string()});
    CAPTURE(refused.out, refused.err);
    CHECK(refused.status == 2);
    CHECK(refused.err.find("yard.csv, line 3, column price") != std::string::npos);
}

TEST_CASE("a supplier is put, its list begun, changed and removed by the form", "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_form"};
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, scratch.path / "box.json"));
    editor::run_command(ui.desk, "buy.supplier");
    ui.settle();
    ui.write("Supplier/name", "metal yard");
    ui.write("Supplier/price list", "metal_yard.csv");
    ui.settle();
    CHECK_FALSE(fs::exists(scratch.path / "metal_yard.csv"));  // not before it is put
    ui.click("Supplier/Put");
    const auto begun = text_of(scratch.path / "metal_yard.csv");
    CHECK(begun.find(editor::project_of(ui.desk).stock[0].section) != std::string::npos);
    REQUIRE(editor::project_of(ui.desk).suppliers.size() == 1);
    CHECK(editor::project_of(ui.desk).suppliers[0].prices == "metal_yard.csv");
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    ui.click("Buy/suppliers/change metal yard");
    ui.click("Supplier/fetched");
    ui.click("Supplier/Put");
    CHECK(editor::project_of(ui.desk).suppliers[0].way == model::WayHome::fetched);
    ui.click("Buy/suppliers/change metal yard");
    ui.click("Supplier/Remove");
    CHECK(editor::project_of(ui.desk).suppliers.empty());
}

TEST_CASE("a list that is there already stays as it is, and a form that is left writes none",
          "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_form_left"};
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, scratch.path / "box.json"));
    editor::run_command(ui.desk, "buy.supplier");
    ui.settle();
    REQUIRE(ui.has("Supplier/begin the list"));
    ui.press(editor::key::escape);
    ui.settle();
    CHECK_FALSE(fs::exists(scratch.path / "prices 1.csv"));
    write(scratch.path / "prices 1.csv", "mine");
    editor::run_command(ui.desk, "buy.supplier");
    ui.settle();
    CHECK_FALSE(ui.has("Supplier/begin the list"));
    ui.click("Supplier/Put");
    CHECK(text_of(scratch.path / "prices 1.csv") == "mine");
}

TEST_CASE("a supplier can be put without beginning a list", "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_form_without"};
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, scratch.path / "box.json"));
    editor::run_command(ui.desk, "buy.supplier");
    ui.settle();
    ui.click("Supplier/begin the list");
    ui.click("Supplier/Put");
    CHECK(editor::project_of(ui.desk).suppliers.size() == 1);
    CHECK_FALSE(fs::exists(scratch.path / "prices 1.csv"));
    // It can be begun later, by a command.
    editor::run_command(ui.desk, "buy.begin_list");
    ui.settle();
    CHECK(fs::exists(scratch.path / "prices 1.csv"));
}

TEST_CASE("rows of a list that are not used are told beside the supplier, with their lines",
          "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_not_used"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    write(scratch.path / "yard.csv",
          yard_list(editor::project_of(ui.desk).stock[0], "30") + "gold bar,20 ft,9\n");
    editor::read_prices_again(ui.desk);
    ui.settle();
    editor::buy_facts_now(ui.desk);
    ui.settle();
    const auto told = ui.item("Buy/suppliers/row 1 not used of yard").value;
    CHECK(told.find("yard.csv, line 4") != std::string::npos);
    CHECK_FALSE(ui.has("Buy/suppliers/row 1 not used of dear"));
}

TEST_CASE("who chooses a supplier is shown the list as it is now", "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_chosen"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    const auto price = [&] {
        return ui.desk.prices.library->lists.at("yard.csv")->bars.at(0).price;
    };
    REQUIRE(price() != 9'900);
    write(scratch.path / "yard.csv", yard_list(editor::project_of(ui.desk).stock[0], "99"));
    ui.settle();
    CHECK(price() != 9'900);
    ui.click("Buy/suppliers/yard");
    CHECK(price() == 9'900);
}

TEST_CASE("the lines of a list are read again where only its rows have moved", "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_moved"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    const auto text = text_of(scratch.path / "yard.csv");
    const auto line = [&] {
        return ui.desk.prices.library->lists.at("yard.csv")->bars.at(0).line.number;
    };
    const auto before = line();
    write(scratch.path / "yard.csv",
          text.substr(0, text.find('\n') + 1) + "\n" + text.substr(text.find('\n') + 1));
    editor::read_prices_again(ui.desk);
    CHECK(line() == before + 1);
}

TEST_CASE("suppliers are chosen and changed by commands too", "[editor][buy][commands]") {
    const tests::ScratchFolder scratch{"buy_commands"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    std::vector<std::string> chosen;
    for (int i = 0; i < 3; ++i) {
        editor::run_command(ui.desk, "buy.next");
        ui.settle();
        chosen.push_back(editor::project_of(ui.desk).shop.supplier);
    }
    CHECK(chosen == std::vector<std::string>{"yard", "dear", ""});
    editor::run_command(ui.desk, "buy.next");
    editor::run_command(ui.desk, "buy.change");
    ui.settle();
    CHECK(ui.item("Supplier/name").value == "yard");
}

TEST_CASE("price lists are found again when the project is saved in another folder",
          "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_elsewhere"};
    fs::create_directories(scratch.path / "there");
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    const auto sum = ui.item("Buy/suppliers/sum of yard").value;
    REQUIRE(editor::save_to(ui.desk, scratch.path / "there" / "box.json"));
    ui.settle();
    editor::buy_facts_now(ui.desk);
    ui.settle();
    CHECK(ui.item("Buy/suppliers/sum of yard").value == sum);
    const auto there = editor::open_project(scratch.path / "there" / "box.json");
    REQUIRE(there);
    CHECK(there->suppliers[0].prices == (scratch.path / "yard.csv").string());
    editor::run_command(ui.desk, "edit.undo");  // the second supplier, put before the first save
    editor::run_command(ui.desk, "edit.redo");
    CHECK(editor::project_of(ui.desk).suppliers[1].prices == (scratch.path / "dear.csv").string());
    REQUIRE(editor::save_to(ui.desk, scratch.path / "back.json"));
    CHECK(editor::project_of(ui.desk).suppliers[0].prices == "yard.csv");
}

TEST_CASE("the schedules cut the bars of the supplier that is chosen", "[editor][buy]") {
    const tests::ScratchFolder scratch{"buy_schedules"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    ui.click("Buy/suppliers/yard");
    REQUIRE(editor::export_to(ui.desk, scratch.path / "out"));
    const auto bars = text_of(scratch.path / "out" / "bars.csv");
    CHECK(bars.find("240 in") != std::string::npos);
    CHECK(bars.find("192 in") == std::string::npos);
    CHECK(fs::exists(scratch.path / "out" / "buying" / "buy.csv"));
}

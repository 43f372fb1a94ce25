// What was bought: paid, taken back, kept beside the project, in the window.
#include "editor/buy_commands.h"
#include "editor/buy_run.h"
#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"
#include "editor/open_project.h"
#include "editor/prices.h"

#include "tests/editor/at_buy.h"
#include "tests/editor/command_run.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <string>

using tests::HeadlessUi;
using tests::open_with_suppliers;
using tests::run;
using tests::text_of;
using tests::write;

namespace fs = std::filesystem;

TEST_CASE("what was paid stays, apart from what is still to buy, and goes with the project",
          "[editor][buy][purchases]") {
    const tests::ScratchFolder scratch{"buy_paid"};
    std::string paid;
    {
        HeadlessUi ui;
        open_with_suppliers(ui, scratch.path);
        ui.click("Buy/suppliers/yard");
        editor::buy_facts_now(ui.desk);
        ui.settle();
        const auto total = ui.item("Buy/estimate/total").value;
        CHECK(ui.item("Buy/estimate/weights").value.find("bought ") == 0);
        ui.click("Buy/estimate/all is bought");
        editor::buy_facts_now(ui.desk);
        ui.settle();
        paid = ui.item("Buy/estimate/purchase 1").value;
        CAPTURE(total, paid);
        CHECK(paid.find(total.substr(0, total.find(' '))) == 0);  // the same sum
        CHECK(paid.find("to yard on 20") != std::string::npos);
        const auto weights = ui.item("Buy/estimate/weights").value;
        CHECK(weights.find("still to buy 0 ") == 0);
        CHECK(weights.find(", built ") != std::string::npos);
        // Fasteners, which the yard does not sell: what they cost nobody knows.
        CHECK(ui.item("Buy/estimate/total").value.find("no price is known yet of ") == 0);
        REQUIRE(fs::exists(scratch.path / "box.bought.csv"));
        // Beside the project's new name too.
        REQUIRE(editor::save_to(ui.desk, scratch.path / "other.json"));
        ui.settle();
        CHECK(text_of(scratch.path / "other.bought.csv") ==
              text_of(scratch.path / "box.bought.csv"));
    }
    // Opened again it is there; taken back it does not count, struck out it is gone.
    HeadlessUi again;
    REQUIRE(editor::open_file(again.desk, scratch.path / "other.json"));
    editor::run_command(again.desk, "place.buy");
    again.settle();
    CHECK(again.item("Buy/estimate/purchase 1").value == paid);
    again.click("Buy/estimate/take back purchase 1");
    const auto counts = [&] {
        return again.item("Buy/estimate/purchase 1").value.find("does not count") ==
               std::string::npos;
    };
    CHECK_FALSE(counts());
    editor::run_command(again.desk, "edit.undo");
    again.settle();
    CHECK(counts());
    again.click("Buy/estimate/take back purchase 1");
    again.click("Buy/estimate/count it again purchase 1");
    CHECK(counts());
    again.click("Buy/estimate/take back purchase 1");
    again.click("Buy/estimate/strike it out purchase 1");
    CHECK_FALSE(again.has("Buy/estimate/purchase 1"));
    CHECK(text_of(scratch.path / "other.bought.csv").find("yard") == std::string::npos);
}

TEST_CASE("where the step is undone the purchase does not count, and counts again when redone",
          "[editor][buy][purchases]") {
    const tests::ScratchFolder scratch{"buy_undone"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    ui.click("Buy/suppliers/yard");
    ui.click("Buy/bars are bought");
    const auto says = [&](const char* words) {
        return ui.item("Buy/estimate/purchase 1").value.find(words) != std::string::npos;
    };
    CHECK_FALSE(says("does not count"));
    editor::run_command(ui.desk, "edit.undo");
    ui.settle();
    CHECK(says("does not count"));
    editor::run_command(ui.desk, "edit.redo");
    ui.settle();
    CHECK_FALSE(says("does not count"));
}

TEST_CASE("what was bought is kept of a project that lies nowhere yet, and written once it does",
          "[editor][buy][purchases]") {
    const tests::ScratchFolder scratch{"buy_unsaved"};
    write(scratch.path / "box.bought.csv", "of a project that is gone");
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    ui.click("Buy/bars are bought");
    REQUIRE(ui.has("Buy/estimate/purchase 1"));
    REQUIRE(editor::save_to(ui.desk, scratch.path / "box.json"));
    ui.settle();
    CHECK(text_of(scratch.path / "box.bought.csv").find("purchase,date") == 0);
    CHECK(text_of(scratch.path / "box.bought.csv.old") == "of a project that is gone");
}

TEST_CASE("what was bought before the first save is saved by the question asked when leaving",
          "[editor][buy][purchases]") {
    const tests::ScratchFolder scratch{"buy_leave"};
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    ui.click("Buy/bars are bought");
    ui.press('Q', editor::key::left_control);
    ui.click("Unsaved/Save");
    ui.fill("Files/Folder", scratch.path.string());
    ui.fill("Files/Name", "box.json");
    REQUIRE(ui.desk.ui.wants_to_leave);
    CHECK(text_of(scratch.path / "box.bought.csv").find("purchase,date") == 0);
}

TEST_CASE("what was bought and cannot go along is kept, told, and tried again",
          "[editor][buy][purchases]") {
    const tests::ScratchFolder scratch{"buy_along_later"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    ui.click("Buy/suppliers/yard");
    ui.click("Buy/bars are bought");
    const auto bought = text_of(scratch.path / "box.bought.csv");
    // No file of a name so long can be put aside: the system takes no longer one.
    const std::string name(244, 'x');
    write(scratch.path / (name + ".bought.csv"), "of a project that is gone");
    REQUIRE_FALSE(editor::save_to(ui.desk, scratch.path / (name + ".json")));
    ui.settle();
    CHECK(ui.item("Trouble/text").value.find("put aside") != std::string::npos);
    CHECK(ui.desk.prices.library->purchases()->all.size() == 1);
    editor::read_prices_again(ui.desk);
    CHECK(ui.desk.prices.library->purchases()->all.size() == 1);
    CHECK(text_of(scratch.path / (name + ".bought.csv")) == "of a project that is gone");
    CHECK(editor::reasons_to_ask(ui.desk).find("bought") != std::string::npos);
    fs::remove(scratch.path / (name + ".bought.csv"));
    ui.settle();
    CHECK(text_of(scratch.path / (name + ".bought.csv")) == bought);
    CHECK(editor::reasons_to_ask(ui.desk).empty());
}

TEST_CASE("what was bought and cannot be read goes along as it is, what is in the way is put aside",
          "[editor][buy][purchases]") {
    const tests::ScratchFolder scratch{"buy_along_unread"};
    {
        HeadlessUi ui;
        open_with_suppliers(ui, scratch.path);
    }
    write(scratch.path / "box.bought.csv", "a photograph");
    write(scratch.path / "other.bought.csv", "of a project that is gone");
    write(scratch.path / "other.bought.csv.old", "of an earlier one");
    HeadlessUi ui;
    REQUIRE(editor::open_file(ui.desk, scratch.path / "box.json"));
    REQUIRE(editor::save_to(ui.desk, scratch.path / "other.json"));
    ui.settle();
    CHECK(text_of(scratch.path / "other.bought.csv") == "a photograph");
    CHECK(text_of(scratch.path / "other.bought.csv.old") == "of an earlier one");
    CHECK(text_of(scratch.path / "other.bought.csv.old2") == "of a project that is gone");
    CHECK_FALSE(ui.desk.prices.library->bought);
}

TEST_CASE("what was bought and cannot be read is left as it is, and the bars come all the same",
          "[editor][buy][purchases]") {
    const tests::ScratchFolder scratch{"buy_bought_broken"};
    {
        HeadlessUi ui;
        open_with_suppliers(ui, scratch.path);
    }
    write(scratch.path / "box.bought.csv", "a photograph");
    HeadlessUi ui;
    REQUIRE(editor::open_file(ui.desk, scratch.path / "box.json"));
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    CHECK(ui.item("Buy/estimate/paid").value.find("box.bought.csv, line 1") == 0);
    ui.click("Buy/bars are bought");
    CHECK(ui.now().summary.bars == 0);
    REQUIRE(ui.desk.ui.notice);
    CHECK(ui.desk.ui.notice->is_trouble);
    CHECK(text_of(scratch.path / "box.bought.csv") == "a photograph");
    const auto refused =
        run({"buy", (scratch.path / "box.json").string(), "--out", scratch.path.string()});
    CHECK(refused.status == 2);
    CHECK(refused.err.find("box.bought.csv, line 1") != std::string::npos);
}

TEST_CASE(
    "where nothing that is sold here is still to buy there is nothing to note, and the last "
    "purchase is taken back by a command",
    "[editor][buy][purchases][commands]") {
    const tests::ScratchFolder scratch{"buy_take_back"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    CHECK_FALSE(editor::has_purchases(ui.desk));
    ui.click("Buy/suppliers/yard");
    REQUIRE(editor::has_more_to_buy(ui.desk));
    ui.click("Buy/bars are bought");
    REQUIRE(ui.has("Buy/estimate/purchase 1"));
    REQUIRE(ui.now().summary.fasteners > 0);  // the yard sells none
    CHECK_FALSE(editor::has_more_to_buy(ui.desk));
    CHECK_FALSE(editor::has_undone_purchases(ui.desk));
    const auto bars = editor::project_of(ui.desk).stock;
    editor::run_command(ui.desk, "buy.take_back");
    ui.settle();
    CHECK(editor::project_of(ui.desk).stock == bars);  // they stay
    CHECK_FALSE(editor::has_purchases(ui.desk));
    editor::run_command(ui.desk, "buy.count_again");
    ui.settle();
    CHECK(editor::has_purchases(ui.desk));
    editor::run_command(ui.desk, "edit.undo");
    editor::run_command(ui.desk, "buy.strike_out");
    ui.settle();
    CHECK_FALSE(ui.has("Buy/estimate/purchase 1"));
    CHECK_FALSE(editor::has_undone_purchases(ui.desk));
}

TEST_CASE("what somebody wrote into the table of purchases himself counts, and can be struck out",
          "[editor][buy][purchases]") {
    const tests::ScratchFolder scratch{"buy_own_row"};
    HeadlessUi ui;
    open_with_suppliers(ui, scratch.path);
    write(scratch.path / "box.bought.csv",
          "purchase,date,supplier,kind,what,size,count,sum,currency,note\n"
          "1,2026-11-28,corner shop,bar,angle,8 ft,1,5.00,USD,\n");
    editor::read_prices_again(ui.desk);
    ui.settle();
    CHECK(ui.item("Buy/estimate/purchase 1").value == "5.00 USD to corner shop on 2026-11-28");
    CHECK_FALSE(ui.has("Buy/estimate/take back purchase 1"));
    CHECK_FALSE(editor::has_purchases(ui.desk));  // to take back
    // The program's own comes behind it; where its row is taken out elsewhere that is told.
    ui.click("Buy/bars are bought");
    REQUIRE(ui.has("Buy/estimate/purchase 2"));
    CHECK_FALSE(ui.has("Buy/estimate/without rows"));
    ui.click("Buy/estimate/strike it out purchase 1");
    CHECK(ui.item("Buy/estimate/purchase 1").value.find("corner shop") == std::string::npos);
    write(scratch.path / "box.bought.csv", "purchase,kind,what,count,sum\n");
    editor::read_prices_again(ui.desk);
    ui.settle();
    CHECK(ui.has("Buy/estimate/without rows"));
}

TEST_CASE("fasteners alone that are bought are a step, which can be undone",
          "[editor][buy][purchases]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    ui.click("Buy/bars are bought");
    const auto bars = editor::project_of(ui.desk);
    editor::run_command(ui.desk, "buy.all");
    ui.settle();
    REQUIRE(ui.has("Buy/estimate/purchase 2"));
    CHECK(editor::project_of(ui.desk).stock == bars.stock);
    CHECK(ui.item("Buy/estimate/purchase 2").value.find("does not count") == std::string::npos);
    editor::run_command(ui.desk, "edit.undo");
    ui.settle();
    CHECK(editor::project_of(ui.desk) == bars);
    CHECK(ui.item("Buy/estimate/purchase 2").value.find("does not count") != std::string::npos);
}

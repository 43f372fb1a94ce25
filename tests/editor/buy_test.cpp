// From whom it is bought: in the window, and by the command that writes the lists.
#include "editor/buy_commands.h"
#include "editor/buy_run.h"
#include "editor/command_line.h"
#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"
#include "editor/open_project.h"
#include "editor/places/place_words.h"
#include "editor/prices.h"
#include "engine/files/csv.h"
#include "engine/files/whole_file.h"
#include "model/buying/buying_files.h"

#include "tests/editor/headless_ui.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

using tests::HeadlessUi;

namespace {

namespace fs = std::filesystem;

const std::string sample = BARWRIGHT_SAMPLES "/tool_cabinet.json";

void write(const fs::path& file, const std::string& text) {
    const auto written = engine::write_whole_file(file, text);
    REQUIRE(written);
}

std::string text_of(const fs::path& file) {
    const auto text = engine::read_whole_file(file);
    if (!text) FAIL(engine::to_text(text.error()));
    return *text;
}

// What the bars of a box cost at a yard that sells one length alone.
std::string yard_list(const model::Stock& stock, const std::string& price) {
    return "what,size,price\ncurrency,,crowns\n" + stock.section + " " + stock.alloy + ",20 ft," +
           price + "\n";
}

// A box in a file, with two suppliers beside it; the desk at Buy.
void open_with_suppliers(HeadlessUi& ui, const fs::path& folder) {
    tests::start_box(ui.desk);
    const auto& stock = editor::project_of(ui.desk).stock[0];
    write(folder / "yard.csv", yard_list(stock, "30"));
    write(folder / "dear.csv", yard_list(stock, "60"));
    for (const auto* name : {"yard", "dear"}) {
        const model::Supplier supplier{.name = name, .prices = std::string(name) + ".csv"};
        REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutSupplier{supplier, {}})));
    }
    REQUIRE(editor::save_to(ui.desk, folder / "box.json"));
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    editor::buy_facts_now(ui.desk);
    ui.settle();
}

struct Run {
    int status = -1;
    std::string out;
    std::string err;
};

Run run(const std::vector<std::string>& arguments) {
    std::ostringstream out;
    std::ostringstream err;
    const int status = editor::run_command_line(arguments, out, err);
    return {status, out.str(), err.str()};
}

}  // namespace

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

TEST_CASE("buy writes every list, and says what it comes to", "[editor][command line][buy]") {
    const tests::ScratchFolder scratch{"buy_files"};
    const auto folder = scratch.path / "out";
    const auto made = run({"buy", sample, "--out", folder.string(), "--paper", "letter"});
    CAPTURE(made.out, made.err);
    CHECK(made.status != 2);
    CHECK(made.out.find("proven cheapest") != std::string::npos);
    for (const auto name : model::buying_names) {
        CAPTURE(name);
        CHECK(fs::file_size(folder / name) > 50);
    }
    CHECK(text_of(folder / "bars.pdf").starts_with("%PDF"));
    for (const auto* name : {"buy.csv", "compare.csv", "what_if.csv", "nest.csv", "stops.csv"}) {
        CAPTURE(name);
        CHECK(engine::read_csv(text_of(folder / name)));
    }
    const auto first = text_of(folder / "bars.pdf");
    run({"buy", sample, "--out", folder.string(), "--paper", "letter"});
    CHECK(text_of(folder / "bars.pdf") == first);
}

TEST_CASE("a supplier that the project does not have is refused with those it has",
          "[editor][command line][buy]") {
    const tests::ScratchFolder scratch{"buy_unknown"};
    const auto refused = run({"buy", sample, "--out", scratch.path.string(), "--supplier", "moon"});
    CHECK(refused.status == 2);
    CHECK(refused.err.find("moon") != std::string::npos);
    CHECK_FALSE(fs::exists(scratch.path / "buy.csv"));
}

TEST_CASE("a price list that was filled in is not written over", "[editor][command line][buy]") {
    const tests::ScratchFolder scratch{"buy_twice"};
    const auto list = scratch.path / "prices_to_fill_in.csv";
    write(list, "mine");
    const auto again = run({"buy", sample, "--out", scratch.path.string()});
    CHECK(again.out.find("is kept") != std::string::npos);
    CHECK(text_of(list) == "mine");
    CHECK(fs::exists(scratch.path / "buy.csv"));
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

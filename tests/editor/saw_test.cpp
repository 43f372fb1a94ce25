// Buying bars and working them off at the saw, by the window's own panels.
#include "editor/band_worker.h"
#include "editor/commands.h"
#include "editor/keys.h"
#include "editor/nest_run.h"
#include "editor/places/bar_offers.h"
#include "model/buying/spoiled.h"

#include "tests/editor/at_saw.h"

#include <catch2/catch.hpp>

#include <string>
#include <utility>
#include <vector>

using tests::cuts_in;
using tests::HeadlessUi;
using tests::start_at_saw;

TEST_CASE("prices and limits are typed behind the lengths of bars", "[editor][places][saw]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    const std::string field = "Buy/bars of " + editor::project_of(ui.desk).stock[0].name;
    ui.fill(field, "16 ft at 27; 20 ft at 33,50, only 4");
    const auto& bars = editor::project_of(ui.desk).stock[0].bars;
    REQUIRE(bars.size() == 2);
    CHECK(bars[0].price == 27.0);
    CHECK_FALSE(bars[0].limit);
    CHECK(bars[1].price == 33.5);
    CHECK(bars[1].limit == 4);
    CHECK(ui.item(field).value == "16 ft at 27; 20 ft at 33.50, only 4");
}

TEST_CASE("a price that is none is refused where it stands", "[editor][places][saw]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto& stock = editor::project_of(ui.desk).stock[0];
    const auto refused = [&](const std::string& text) {
        const auto offers = editor::read_offers(ui.now(), stock, text);
        return offers ? std::string() : offers.error().message;
    };
    CHECK(refused("16 ft at much").find("a price is a number") != std::string::npos);
    CHECK(refused("16 ft at -3").find("a price is a number") != std::string::npos);
    CHECK(refused("16 ft at 27, only few").find("whole number") != std::string::npos);
    CHECK_FALSE(refused("at 27").empty());
    CHECK(refused("16 ft at 27; ;").empty());
}

TEST_CASE("a box without prices says that the least length is proven", "[editor][places][saw]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    auto stock = editor::project_of(ui.desk).stock[0];
    for (auto& bar : stock.bars) bar.price.reset();
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutStock{stock, stock.name})));
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    const std::string verdict = "Buy/verdict";
    CHECK(ui.item(verdict).value == "looking for the least length of bar");
    editor::nest_now(ui.desk);
    ui.settle();
    CHECK(ui.item(verdict).value == "no price stated; proven least length of bar");
}

TEST_CASE("with a thread beside the window the nest comes by itself, and again after an edit",
          "[editor][places][saw]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.bands = std::make_unique<editor::BandWorker>();
    const auto wait = [&] {
        for (int i = 0; i < 2000 && !ui.now().summary.is_nested; ++i) {
            ui.settle();
            ui.desk.bands->wait();
        }
    };
    wait();
    REQUIRE(ui.now().summary.is_nested);
    auto shop = editor::project_of(ui.desk).shop;
    shop.kerf = "1/4 in";
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetShop{shop})));
    CHECK_FALSE(ui.now().summary.is_nested);
    wait();
    CHECK(ui.now().summary.is_nested);
}

TEST_CASE("the bars are bought by one click, in one step, and then nothing is to buy",
          "[editor][places][saw]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::nest_now(ui.desk);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    const auto before = ui.desk.history.now();
    REQUIRE(ui.now().summary.bars > 0);
    ui.click("Buy/bars are bought");
    CHECK(ui.now().summary.bars == 0);
    CHECK_FALSE(editor::project_of(ui.desk).stock[0].at_saw.empty());
    CHECK_FALSE(ui.has("Buy/bars are bought"));
    ui.press('Z', editor::key::left_control);
    CHECK(editor::project_of(ui.desk) == *before);
}

TEST_CASE("a cut is ticked, taken back and spoiled at the saw", "[editor][places][saw]") {
    HeadlessUi ui;
    start_at_saw(ui);
    const int all = cuts_in(ui.now(), model::CutState::planned);
    REQUIRE(all > 2);
    ui.click("Make/saw/bar 1 cut 1");
    CHECK(cuts_in(ui.now(), model::CutState::cut) == 1);
    CHECK(cuts_in(ui.now(), model::CutState::planned) == all - 1);
    ui.click("Make/saw/bar 1 cut 1");
    CHECK(cuts_in(ui.now(), model::CutState::cut) == 0);
    ui.click("Make/saw/bar 1 cut 1 spoiled");
    CHECK(cuts_in(ui.now(), model::CutState::spoiled) == 1);
    CHECK(cuts_in(ui.now(), model::CutState::planned) == all);
    ui.click("Make/saw/bar 1 cut 1 good after all");
    CHECK(cuts_in(ui.now(), model::CutState::spoiled) == 0);
}

TEST_CASE("once a piece is spoiled it is said what to do now, and the bad one is kept",
          "[editor][places][saw]") {
    HeadlessUi ui(1600, 2400);
    start_at_saw(ui);
    editor::run_command(ui.desk, "saw.bought");
    ui.settle();
    CHECK_FALSE(ui.has("Make/saw/cut again"));
    const auto mark = ui.now().saw.at(0).cuts.at(0).mark;
    ui.click("Make/saw/bar 1 cut 1 spoiled");
    const auto told = ui.item("Make/saw/cut again").value;
    CAPTURE(told);
    CHECK(told.find(mark) != std::string::npos);
    CHECK(told.find("Cut " + mark + " again from bar ") == 0);
    // Undone it is not spoiled any more, and done again it is.
    editor::run_command(ui.desk, "edit.undo");
    ui.settle();
    CHECK_FALSE(ui.has("Make/saw/cut again"));
    editor::run_command(ui.desk, "edit.redo");
    ui.settle();
    REQUIRE(ui.has("Make/saw/cut again"));
    ui.write("Make/saw/bad piece", "1 in");
    ui.click("Make/saw/keep bad piece");
    CHECK(ui.item("Make/saw/bad piece trouble").value.find("scrap") != std::string::npos);
    CHECK(editor::project_of(ui.desk).stock[0].offcuts.empty());
    ui.write("Make/saw/bad piece", "13 1/2 in");
    ui.click("Make/saw/keep bad piece");
    REQUIRE(editor::project_of(ui.desk).stock[0].offcuts.size() == 1);
    CHECK(editor::project_of(ui.desk).stock[0].offcuts[0].length == "13 1/2 in");
    // From what it is cut again is said until it is.
    CHECK_FALSE(ui.has("Make/saw/bad piece"));
    REQUIRE(ui.has("Make/saw/cut again"));
    editor::nest_now(ui.desk);
    ui.settle();
    const auto again = model::tick_of_cutting_again(editor::project_of(ui.desk), ui.now().saw,
                                                    ui.desk.ui.make.saw.spoiled->piece);
    REQUIRE(again);
    ui.click("Make/saw/bar " + std::to_string(again->bar) + " cut " +
             std::to_string(again->cut + 1));
    CHECK_FALSE(ui.has("Make/saw/cut again"));
}

TEST_CASE("all cuts are ticked stop by stop until nothing is left to cut",
          "[editor][places][saw]") {
    HeadlessUi ui;
    start_at_saw(ui);
    const int all = cuts_in(ui.now(), model::CutState::planned);
    ui.click("Make/saw/stop by stop");
    // What is ticked stays where it is.
    for (int i = 1; cuts_in(ui.now(), model::CutState::planned) > 0 && i <= all; ++i) {
        const auto line = "Make/saw/stop line " + std::to_string(i);
        CAPTURE(line);
        REQUIRE(ui.has(line));
        ui.click(line);
    }
    CHECK(ui.has("Make/saw/stop line 1"));
    CHECK(cuts_in(ui.now(), model::CutState::cut) == all);
    CHECK(cuts_in(ui.now(), model::CutState::planned) == 0);
    CHECK(ui.now().summary.bars == 0);
}

TEST_CASE("the saw is worked off by keys alone", "[editor][places][saw][commands]") {
    HeadlessUi ui;
    start_at_saw(ui);
    const auto run = [&](const char* id) {
        editor::run_command(ui.desk, id);
        ui.settle();
    };
    run("saw.bought");
    CHECK(ui.now().summary.bars == 0);
    const int all = cuts_in(ui.now(), model::CutState::planned);
    run("saw.tick");
    CHECK(cuts_in(ui.now(), model::CutState::cut) == 1);
    run("saw.anew");
    CHECK(cuts_in(ui.now(), model::CutState::planned) == all - 1);
    while (cuts_in(ui.now(), model::CutState::planned) > 0) run("saw.tick");
    run("saw.rack");
    const auto& stock = editor::project_of(ui.desk).stock[0];
    for (const auto& bar : stock.at_saw) CHECK(bar.is_used_up);
}

TEST_CASE("what becomes of a bad piece is said by keys alone", "[editor][places][saw][commands]") {
    HeadlessUi ui;
    start_at_saw(ui);
    const auto run = [&](const char* id) {
        editor::run_command(ui.desk, id);
        ui.settle();
    };
    run("saw.bought");
    run("saw.spoil");
    REQUIRE(ui.has("Make/saw/cut again"));
    run("saw.keep_bad");  // nobody has said how long it is
    CHECK(editor::project_of(ui.desk).stock[0].offcuts.empty());
    CHECK_FALSE(ui.item("Make/saw/bad piece trouble").value.empty());
    ui.desk.ui.make.saw.spoiled->typed = "13 1/2 in";
    run("saw.keep_bad");
    REQUIRE(editor::project_of(ui.desk).stock[0].offcuts.size() == 1);
    CHECK_FALSE(ui.has("Make/saw/bad piece"));
    CHECK(ui.has("Make/saw/cut again"));
    run("saw.spoil");
    REQUIRE(ui.has("Make/saw/bad piece"));
    run("saw.scrap");
    CHECK_FALSE(ui.has("Make/saw/bad piece"));
    // Until it is cut again by keys too.
    for (int i = 0; ui.has("Make/saw/cut again") && i < 40; ++i) run("saw.tick");
    CHECK_FALSE(ui.desk.ui.make.saw.spoiled);
    CHECK(cuts_in(ui.now(), model::CutState::planned) > 0);
}

TEST_CASE("a cut that is ticked before the first of its bar stays in its line",
          "[editor][places][saw]") {
    HeadlessUi ui;
    start_at_saw(ui);
    editor::run_command(ui.desk, "saw.bought");
    ui.settle();
    REQUIRE(ui.now().saw.at(0).cuts.size() > 2);
    // What is written on it, its hand too, and where it begins.
    const auto lines = [&] {
        std::vector<std::string> all;
        for (std::size_t i = 0; i < ui.now().saw.at(0).cuts.size(); ++i) {
            const auto name = "Make/saw/bar 1 cut " + std::to_string(i + 1) + " is";
            all.push_back(ui.item(name).value + " from " +
                          std::to_string(ui.now().saw[0].cuts[i].start.nm()));
        }
        return all;
    };
    const auto printed = lines();
    ui.click("Make/saw/bar 1 cut 2");
    CHECK(ui.item("Make/saw/bar 1 cut 2").value == "yes");
    CHECK(lines() == printed);
    ui.click("Make/saw/bar 1 cut 2");
    CHECK(cuts_in(ui.now(), model::CutState::cut) == 0);
}

TEST_CASE("what lies behind a piece that was cut short moves once that is measured",
          "[editor][places][saw]") {
    HeadlessUi ui;
    start_at_saw(ui);
    editor::run_command(ui.desk, "saw.bought");
    ui.settle();
    ui.click("Make/saw/bar 1 cut 1 spoiled");
    const auto before = ui.now().saw.at(0).cuts.at(1).start;
    const auto length = ui.now().saw.at(0).cuts.at(0).length;
    ui.write("Make/saw/bad piece", "3 in");
    SECTION("in the scrap") { ui.click("Make/saw/close spoiled"); }
    SECTION("on the rack") {
        ui.write("Make/saw/bad piece", "13 in");
        ui.click("Make/saw/keep bad piece");
    }
    const auto& bar = ui.now().saw.at(0);
    CHECK(bar.cuts[0].length < length);
    CHECK(before - bar.cuts[1].start == length - bar.cuts[0].length);
    CHECK(ui.has("Make/saw/cut again"));
}

TEST_CASE("a bad piece that is good after all comes back from the rack", "[editor][places][saw]") {
    HeadlessUi ui;
    start_at_saw(ui);
    editor::run_command(ui.desk, "saw.bought");
    ui.settle();
    ui.click("Make/saw/bar 1 cut 1 spoiled");
    ui.write("Make/saw/bad piece", "13 1/2 in");
    ui.click("Make/saw/keep bad piece");
    const auto offcuts = [&] { return editor::project_of(ui.desk).stock[0].offcuts.size(); };
    REQUIRE(offcuts() == 1);
    ui.click("Make/saw/bar 1 cut 1 good after all");
    CHECK(offcuts() == 0);
    CHECK(cuts_in(ui.now(), model::CutState::cut) == 1);
    // Where it was used meanwhile, that is said beside it.
    editor::run_command(ui.desk, "edit.undo");
    ui.settle();
    auto stock = editor::project_of(ui.desk).stock[0];
    stock.offcuts.clear();
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutStock{stock, stock.name})));
    ui.settle();
    ui.click("Make/saw/bar 1 cut 1 good after all");
    CHECK(ui.item("Make/saw/trouble").value.find("not there any more") != std::string::npos);
    CHECK(cuts_in(ui.now(), model::CutState::spoiled) == 1);
}

TEST_CASE("what is said of a spoiled piece is in sight, and by which unit offcuts are kept",
          "[editor][places][saw]") {
    HeadlessUi ui(1280, 480);
    start_at_saw(ui);
    editor::run_command(ui.desk, "saw.bought");
    ui.settle();
    editor::run_command(ui.desk, "saw.spoil");
    ui.settle();
    const auto& field = ui.item("Make/saw/bad piece");
    CHECK(field.visible);
    CHECK(ui.item("Make/saw/measure bad piece").value.find("offcut where it is 12 in or longer") !=
          std::string::npos);
}

TEST_CASE("which hand is written on a piece stands at its cut and at its stop",
          "[editor][places][saw]") {
    HeadlessUi ui;
    start_at_saw(ui);
    int opposite = 0;
    for (const auto& bar : ui.now().saw) {
        for (std::size_t i = 0; i < bar.cuts.size(); ++i) {
            const auto& cut = bar.cuts[i];
            const auto& words = ui.item("Make/saw/bar " + std::to_string(bar.number) + " cut " +
                                        std::to_string(i + 1) + " is")
                                    .value;
            CAPTURE(words);
            const bool is_opposite = cut.hand == model::Hand::opposite;
            opposite += is_opposite;
            CHECK((words.find(cut.mark + " opp.") == 0) == is_opposite);
        }
    }
    CHECK(opposite > 0);
    ui.click("Make/saw/stop by stop");
    bool is_told = false;
    for (int i = 1; ui.has("Make/saw/stop line " + std::to_string(i) + " is"); ++i) {
        const auto& words = ui.item("Make/saw/stop line " + std::to_string(i) + " is").value;
        is_told = is_told || words.find("opp.") != std::string::npos;
    }
    CHECK(is_told);
}

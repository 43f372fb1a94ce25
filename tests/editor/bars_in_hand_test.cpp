// Who cuts a piece of a bar has the bar in hand: it counts as bought, by the window's own panels.
#include "editor/places/bar_text.h"
#include "editor/places/saw_changes.h"
#include "model/buying/purchase_made.h"

#include "tests/editor/at_saw.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <string>

using tests::cuts_in;
using tests::HeadlessUi;
using tests::start_at_saw;

namespace {

std::string told(const HeadlessUi& ui) {
    return ui.desk.ui.notice ? ui.desk.ui.notice->text : std::string();
}

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("who cuts a piece of a bar that is still to buy has bought it, which is said and noted",
          "[editor][places][saw][purchases]") {
    HeadlessUi ui;
    start_at_saw(ui);
    auto stock = editor::project_of(ui.desk).stock[0];
    for (auto& bar : stock.bars) bar.price = 27.5;
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutStock{stock, stock.name})));
    editor::nest_now(ui.desk);
    ui.settle();
    const auto before = ui.desk.history.now();
    REQUIRE(ui.now().summary.bars > 0);
    const auto price = editor::price_of_bars(ui.now());
    REQUIRE(price);
    const auto paid = [&] {
        return model::paid_for(*ui.desk.prices.library->purchases(), editor::project_of(ui.desk));
    };
    ui.click("Make/saw/bar 1 cut 1");
    REQUIRE(ui.desk.ui.notice);
    CAPTURE(ui.desk.ui.notice->text);
    CHECK(ui.desk.ui.notice->text.find("as bought, since a piece is cut. Noted as paid: ") !=
          std::string::npos);
    CHECK(ui.desk.ui.notice->text.find("Undo takes the bars back") != std::string::npos);
    CHECK(ui.now().summary.bars == 0);
    REQUIRE(paid().size() == 1);
    CHECK(paid()[0].note == model::note_of_bars_in_hand);
    CHECK(model::total_of(paid()[0]) == std::llround(*price * 100.0));
    // One step, which takes the purchase with it; the next cut buys nothing more.
    ui.press('Z', editor::key::left_control);
    CHECK(editor::project_of(ui.desk) == *before);
    CHECK(paid().empty());
    editor::run_command(ui.desk, "edit.redo");
    ui.settle();
    CHECK(paid().size() == 1);
    ui.click("Make/saw/bar 1 cut 2");
    CHECK(paid().size() == 1);
    CHECK(cuts_in(ui.now(), model::CutState::cut) == 2);
}

TEST_CASE("a piece that is spoiled by key from a bar that is still to buy is noted alike",
          "[editor][places][saw][purchases][commands]") {
    HeadlessUi ui;
    start_at_saw(ui);
    editor::run_command(ui.desk, "saw.spoil");
    ui.settle();
    REQUIRE(ui.desk.prices.library->purchases()->all.size() == 1);
    CHECK(ui.desk.prices.library->purchases()->all[0].note == model::note_of_bars_in_hand);
    REQUIRE(ui.has("Make/saw/cut again"));
    // Planned anew cuts change their places: of which was talked nobody knows then.
    editor::run_command(ui.desk, "saw.anew");
    ui.settle();
    CHECK_FALSE(ui.has("Make/saw/cut again"));
}

TEST_CASE("whose only cut is taken back hears that its bars still count as bought",
          "[editor][places][saw][purchases]") {
    HeadlessUi ui;
    start_at_saw(ui);
    const auto before = ui.desk.history.now();
    REQUIRE(ui.now().summary.bars > 0);
    ui.click("Make/saw/bar 1 cut 1");
    ui.click("Make/saw/bar 1 cut 2");
    ui.desk.ui.notice.reset();
    ui.click("Make/saw/bar 1 cut 2");
    CHECK_FALSE(says(told(ui), "as bought"));
    ui.click("Make/saw/bar 1 cut 1");
    CAPTURE(told(ui));
    REQUIRE(cuts_in(ui.now(), model::CutState::cut) == 0);
    CHECK(ui.now().summary.bars == 0);
    CHECK(says(told(ui), "still count"));
    CHECK(says(told(ui), "Undo takes the bars back"));
    for (int step = 0; step < 4; ++step) editor::run_command(ui.desk, "edit.undo");
    CHECK(editor::project_of(ui.desk) == *before);
}

TEST_CASE("what a tick says beforehand tells that bars to buy count as bought then",
          "[editor][places][saw][purchases]") {
    HeadlessUi ui;
    start_at_saw(ui);
    const std::vector<model::SawTick> first{{1, 0}};
    REQUIRE(ui.now().saw.at(0).from == model::BarFrom::shop);
    CHECK(says(editor::tick_hint(ui.now(), first, false), "count as bought"));
    CHECK_FALSE(says(editor::tick_hint(ui.now(), first, true), "bought"));
    editor::run_command(ui.desk, "saw.bought");
    ui.settle();
    CHECK(editor::tick_hint(ui.now(), first, false) == "Tick when it is cut");
    CHECK(editor::bought_by_tick(ui.now(), first).empty());
}

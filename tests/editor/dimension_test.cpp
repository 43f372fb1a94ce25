#include "editor/commands.h"
#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "editor/places/tape_choice.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using tests::HeadlessUi;
namespace key = editor::key;
using namespace engine::literals;

namespace {

model::Edit dimension(const std::string& name,
                      const std::string& formula,
                      std::optional<std::string> least = {},
                      std::optional<std::string> most = {}) {
    return model::PutDimension{{.name = name, .formula = formula, .least = least, .most = most},
                               {}};
}

// A frame that is as high as the dimension says, and nothing else.
void state(HeadlessUi& ui, std::vector<model::Edit> edits) {
    editor::Change change;
    change.edits = std::move(edits);
    REQUIRE(editor::submit(ui.desk, change));
    ui.settle();
}

}  // namespace

TEST_CASE("a typed dimension moves everything that stands on it", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    REQUIRE(ui.shown("width") == "24");
    const auto bar = ui.now().summary.bar;
    ui.fill("Lay out/width", "36 1/2");
    CHECK(ui.shown("width") == "36 1/2");
    CHECK(ui.now().summary.bar > bar);
    CHECK_FALSE(ui.desk.ui.hand.typed);
}

TEST_CASE("a formula may name other dimensions", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.fill("Lay out/depth", "width/2 + 1/8 in");
    CHECK(ui.shown("depth") == "12 1/8");
    ui.fill("Lay out/width", "30");
    CHECK(ui.shown("depth") == "15 1/8");
}

TEST_CASE("nonsense in a formula keeps the value and says where", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.fill("Lay out/width", "24 in + ?");
    CHECK(ui.shown("width") == "24");
    CHECK_THAT(ui.item("Lay out/refused width").value, Catch::StartsWith("behind `24 in + `"));
    REQUIRE(ui.desk.ui.hand.typed);
    CHECK(ui.desk.ui.hand.typed->text == "24 in + ?");
    ui.press('A', key::left_control);
    ui.type("25");
    ui.press(key::enter);
    CHECK(ui.shown("width") == "25");
    CHECK_FALSE(ui.has("Lay out/refused width"));
}

TEST_CASE("a name that is not there is refused with the value kept", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.fill("Lay out/depth", "widht / 2");
    CHECK(ui.shown("depth") == "16");
    CHECK_THAT(ui.item("Lay out/refused depth").value, Catch::Contains("widht"));
}

TEST_CASE("a formula that needs itself is refused with the value kept", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.fill("Lay out/depth", "width");
    ui.fill("Lay out/width", "depth + 1 in");
    CHECK(ui.shown("width") == "24");
    CHECK(ui.has("Lay out/refused width"));
}

TEST_CASE("escape leaves a typed dimension as it was", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.write("Lay out/width", "99");
    ui.press(key::escape);
    CHECK(ui.shown("width") == "24");
    CHECK_FALSE(ui.desk.ui.hand.typed);
}

TEST_CASE("tab takes what was typed and goes on to the next dimension", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.write("Lay out/width", "30");
    ui.press(key::tab);
    CHECK(ui.shown("width") == "30");
    REQUIRE(ui.desk.ui.hand.typed);
    CHECK(ui.desk.ui.hand.typed->dimension == editor::project_of(ui.desk).dimensions[1].name);
    ui.press('A', key::left_control);
    ui.type("17");
    ui.press(key::enter);
    CHECK(ui.shown(editor::project_of(ui.desk).dimensions[1].name) == "17");
}

TEST_CASE("a click elsewhere takes what was typed", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.write("Lay out/width", "28");
    ui.click("View/picture");
    CHECK(ui.shown("width") == "28");
}

TEST_CASE("pulling the strip changes the dimension by a graduation a pixel, as one step",
          "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto revision = ui.desk.history.revision();
    ui.drag("Lay out/width", 40, 0);
    CHECK(ui.shown("width") == "25 1/4");
    CHECK_FALSE(ui.desk.ui.hand.dragged);
    ui.press('Z', key::left_control);
    CHECK(ui.shown("width") == "24");
    CHECK(ui.desk.history.revision() == revision);
}

TEST_CASE("two pulls in a row are two steps", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.drag("Lay out/width", 32, 0);
    ui.drag("Lay out/width", 32, 0);
    CHECK(ui.shown("width") == "26");
    ui.press('Z', key::left_control);
    CHECK(ui.shown("width") == "25");
}

TEST_CASE("shift makes a pull eight times as long", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.drag("Lay out/width", 8, 0, 0, key::left_shift);
    CHECK(ui.shown("width") == "26");
}

TEST_CASE("a pull stops at the dimension's limits", "[editor][dimension]") {
    HeadlessUi ui;
    state(ui, {dimension("rise", "10", "9 1/2", "11")});
    ui.drag("Lay out/rise", 200, 0);
    CHECK(ui.shown("rise") == "11");
    ui.drag("Lay out/rise", -400, 0);
    CHECK(ui.shown("rise") == "9 1/2");
}

TEST_CASE("a pull does not throw away a formula", "[editor][dimension]") {
    HeadlessUi ui;
    state(ui, {dimension("a", "10"), dimension("b", "a * 2")});
    ui.drag("Lay out/b", 64, 0);
    CHECK(editor::project_of(ui.desk).dimensions[1].formula == "a * 2");
    CHECK_THAT(ui.item("Lay out/refused b").value, Catch::Contains("formula"));
}

TEST_CASE("the arrow keys nudge a typed dimension by one mark of the tape", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.click("Lay out/width");
    ui.press(key::up);
    ui.press(key::up);
    ui.press(key::enter);
    CHECK(ui.shown("width") == "24 1/16");
}

TEST_CASE("a dimension is added, renamed and removed by its form", "[editor][dimension]") {
    HeadlessUi ui;
    ui.click("Lay out/New dimension");
    ui.write("Dimension/name", "toe space");
    ui.write("Dimension/formula", "3 1/2");
    ui.click("Dimension/Put");
    CHECK(ui.shown("toe space") == "3 1/2");
    ui.click("Lay out/edit toe space");
    ui.write("Dimension/name", "toe kick");
    ui.write("Dimension/least", "2");
    ui.click("Dimension/Put");
    CHECK(ui.shown("toe kick") == "3 1/2");
    CHECK(editor::project_of(ui.desk).dimensions[0].least == "2");
    ui.click("Lay out/edit toe kick");
    ui.click("Dimension/Remove");
    CHECK(editor::project_of(ui.desk).dimensions.empty());
}

TEST_CASE("a dimension that others need is not removed, and the form says why",
          "[editor][dimension]") {
    HeadlessUi ui;
    state(ui, {dimension("a", "10"), dimension("b", "a * 2")});
    ui.click("Lay out/edit a");
    ui.click("Dimension/Remove");
    CHECK(editor::project_of(ui.desk).dimensions.size() == 2);
    REQUIRE(std::holds_alternative<editor::DimensionForm>(ui.desk.ui.dialog));
    CHECK_FALSE(std::get<editor::DimensionForm>(ui.desk.ui.dialog).trouble.empty());
}

TEST_CASE("another tape shows the same lengths in its own marks", "[editor][dimension]") {
    HeadlessUi ui;
    state(ui, {dimension("a", "10 3/8 in")});
    ui.click("Lay out/Tape");
    ui.click("Lay out/Tape list/tape 1 mm");
    CHECK(ui.shown("a") == "~264");
}

TEST_CASE("stepping lands on a whole mark of the tape", "[editor][dimension]") {
    const engine::TapeStyle inches;
    const engine::Quantity start{engine::QuantityKind::length, 1_in + 1_in_64, 0.0};
    CHECK(editor::stepped(start, 0, {}, inches).length.nm() % (1_in_64 * 2).nm() == 0);
    const engine::TapeStyle metric{.form = engine::TapeForm::millimetre, .decimals = 0};
    CHECK(editor::stepped({engine::QuantityKind::length, 10_mm, 0.0}, 3, {}, metric).length ==
          13_mm);
}

TEST_CASE("on every tape a pull of the strip lands on the tape's own marks, a step a pixel",
          "[editor][dimension]") {
    for (const auto& tape : editor::offered_tapes()) {
        INFO(editor::tape_name(tape));
        HeadlessUi ui;
        state(ui, {model::SetShown{tape}, dimension("rise", "508 mm")});
        ui.drag("Lay out/rise", 40, 0);
        const auto rise = editor::value_of(ui.now(), "rise")->length;
        CHECK(rise.nm() % engine::tape_step(tape).nm() == 0);
        CHECK(rise == 508_mm + editor::hand_step(tape) * 40);
    }
}

TEST_CASE(
    "a step of the hand is a mark of a fraction tape, and no finer than half a millimetre in "
    "decimals",
    "[editor][dimension]") {
    using engine::TapeForm;
    const auto step = [](TapeForm form, int denominator, int decimals) {
        return editor::hand_step({form, denominator, decimals, false});
    };
    CHECK(step(TapeForm::inch_fraction, 64, 3) == 1_in_64);
    CHECK(step(TapeForm::feet_inches, 32, 3) == 1_in_64 * 2);
    CHECK(step(TapeForm::inch_decimal, 32, 3) == engine::Length::from_nm(508'000));
    CHECK(step(TapeForm::millimetre, 32, 0) == 1_mm);
    CHECK(step(TapeForm::millimetre, 32, 1) == engine::Length::from_nm(500'000));
    CHECK(step(TapeForm::metre, 32, 7) == engine::Length::from_nm(500'000));
}

TEST_CASE("a drag ends with the button though its place was left", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto at = ui.item("Lay out/width");
    ui.move_to(at.middle_x(), at.middle_y());
    ui.input.button(0, true);
    ui.input.move(at.middle_x() + 32, at.middle_y());
    ui.settle();
    REQUIRE(ui.desk.ui.hand.dragged);
    ui.press('5', key::left_control);
    REQUIRE(ui.desk.ui.place == editor::Place::buy);
    ui.input.button(0, false);
    ui.settle();
    CHECK_FALSE(ui.desk.ui.hand.dragged);
    ui.press('2', key::left_control);
    ui.fill("Lay out/width", "30");
    ui.click("Lay out/width");
    ui.press(key::escape);
    CHECK(ui.shown("width") == "30");
    ui.press('Z', key::left_control);
    CHECK(ui.shown("width") == "25");
}

TEST_CASE("a limit may stand on what stands on the dimension itself", "[editor][dimension]") {
    HeadlessUi ui;
    state(ui, {dimension("depth", "16"), dimension("half", "depth/2")});
    ui.click("Lay out/edit depth");
    ui.write("Dimension/least", "half");
    ui.click("Dimension/Put");
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    CHECK(editor::project_of(ui.desk).dimensions[0].least == "half");
    ui.click("Lay out/edit depth");
    ui.write("Dimension/most", "halv");
    ui.click("Dimension/Put");
    REQUIRE(std::holds_alternative<editor::DimensionForm>(ui.desk.ui.dialog));
    CHECK_THAT(std::get<editor::DimensionForm>(ui.desk.ui.dialog).trouble, Catch::Contains("halv"));
}

TEST_CASE("a text that was refused waits for the next click on the strip", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.write("Lay out/width", "24 in + ?");
    ui.click("View/picture");
    CHECK(ui.shown("width") == "24");
    CHECK_FALSE(ui.desk.ui.hand.typed);
    ui.click("Lay out/width");
    REQUIRE(ui.desk.ui.hand.typed);
    CHECK(ui.desk.ui.hand.typed->text == "24 in + ?");
    CHECK(ui.has("Lay out/refused width"));
    ui.press(key::escape);
    ui.click("Lay out/width");
    CHECK(ui.desk.ui.hand.typed->text == "24 in");
}

TEST_CASE("a dimension half typed is taken when its place is left by key", "[editor][dimension]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.write("Lay out/width", "31");
    ui.press('3', key::left_control);
    CHECK(ui.shown("width") == "31");
    CHECK_FALSE(ui.desk.ui.hand.typed);
}

TEST_CASE("a value outside its own limits is refused at the field", "[editor][dimension]") {
    HeadlessUi ui;
    state(ui, {dimension("rise", "10", "9 1/2", "run / 2"), dimension("run", "22")});
    ui.fill("Lay out/rise", "11 1/4");
    CHECK(ui.shown("rise") == "10");
    CHECK_THAT(ui.item("Lay out/refused rise").value,
               Catch::StartsWith("11 1/4 is more than its most, 11"));
    ui.press(key::escape);
    ui.fill("Lay out/rise", "9");
    CHECK(ui.shown("rise") == "10");
    CHECK_THAT(ui.item("Lay out/refused rise").value,
               Catch::StartsWith("9 is less than its least, 9 1/2"));
}

TEST_CASE("a name that a formula could not use is refused in plain words", "[editor][dimension]") {
    HeadlessUi ui;
    ui.click("Lay out/New dimension");
    ui.write("Dimension/name", "2nd shelf");
    ui.write("Dimension/formula", "3 1/2");
    ui.click("Dimension/Put");
    REQUIRE(std::holds_alternative<editor::DimensionForm>(ui.desk.ui.dialog));
    CHECK_THAT(std::get<editor::DimensionForm>(ui.desk.ui.dialog).trouble,
               Catch::Contains("begin with a letter") && !Catch::Contains("could not use"));
}

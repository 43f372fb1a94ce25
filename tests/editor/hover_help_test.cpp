// Help that shows while the pointer rests on a thing.
#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using tests::HeadlessUi;

namespace {

bool are_apart(const editor::ItemRecord& a, const editor::ItemRecord& b) {
    return a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
}

}  // namespace

TEST_CASE("help shows after a moment, beside what it belongs to", "[editor][hover help]") {
    for (const float height : {720.0F, 1000.0F}) {
        HeadlessUi ui(1280, height);
        tests::start_box(ui.desk);
        ui.settle();
        for (const char* name : {"Lay out/edit width", "Lay out/Tape", "Lay out/fold made of"}) {
            INFO(name);
            const auto at = ui.item(name);
            ui.input.move(at.middle_x(), at.middle_y());
            for (int i = 0; i < 10; ++i) ui.frame();  // a sixth of a second
            CHECK_FALSE(ui.has("Lay out/help"));
            ui.settle();
            REQUIRE(ui.has("Lay out/help"));
            const auto& help = ui.item("Lay out/help");
            CHECK(are_apart(help, at));
            CHECK(help.bottom <= height);
            CHECK(help.right <= 1280);
        }
    }
}

TEST_CASE("while something is typed no help comes in its way", "[editor][hover help]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.click("Lay out/width");
    ui.type("30");
    const auto at = ui.item("Lay out/edit width");
    ui.move_to(at.middle_x(), at.middle_y());
    for (int i = 0; i < 60; ++i) ui.frame();
    CHECK_FALSE(ui.has("Lay out/help"));
    ui.press(editor::key::enter);
    ui.settle();
    CHECK(ui.has("Lay out/help"));
}

// The dialog that steps a frame over an obstacle.
#include "editor/commands.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Contains;
using tests::HeadlessUi;

namespace {

const model::Project& project_in(HeadlessUi& ui) { return *ui.now().project; }

// A box frame in whose front left corner a well stands.
void open_step(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    const model::Obstacle well{
        .name = "well",
        .shape = model::WheelWell{.least = {"-1", "-1", "-1"}, .most = {"9", "8", "4"}}};
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutObstacle{well})));
    ui.settle();
    editor::run_command(ui.desk, "frame.step_over");
    ui.settle();
}

std::string heads_of(HeadlessUi& ui) {
    const auto& dimensions = project_in(ui).dimensions;
    const auto found = std::ranges::find_if(
        dimensions, [](const auto& it) { return it.name.ends_with(" heads"); });
    return found == dimensions.end() ? "" : found->formula;
}

bool is_near_well(HeadlessUi& ui) {
    return std::ranges::any_of(ui.now().findings, [](const model::Finding& finding) {
        return std::ranges::any_of(finding.concerns, [](const model::Subject& it) {
            return it.kind == model::SubjectKind::obstacle;
        });
    });
}

}  // namespace

TEST_CASE("the step keeps room for heads, and nothing of the obstacle is left to mend",
          "[editor][step]") {
    HeadlessUi ui;
    open_step(ui);
    CHECK(is_near_well(ui));
    ui.click("Step/Put");
    ui.settle();
    CHECK(heads_of(ui) != "");
    CHECK_FALSE(is_near_well(ui));
}

TEST_CASE("room for heads and the least distance of planes can be stated", "[editor][step]") {
    HeadlessUi ui;
    open_step(ui);
    ui.write("Step/apart", "20 in");
    ui.settle();
    CHECK_FALSE(ui.item("Step/Put").enabled);
    CHECK_THAT(ui.item("Step/trouble").value, Contains("20"));
    ui.write("Step/apart", "1 in");
    ui.write("Step/heads", "3/8 in");
    ui.settle();
    ui.click("Step/Put");
    ui.settle();
    CHECK(heads_of(ui) == "3/8 in");
}

#include "editor/commands.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using tests::HeadlessUi;

namespace {

// A box whose right-hand front post is gone: what ended there hangs in the air.
void break_box(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    const auto& frame = editor::project_of(ui.desk).frames[0];
    for (const auto& member : frame.members) {
        if (member.run != model::Axis::z) continue;
        const auto change = editor::change_of(model::RemoveMember{frame.name, member.name});
        REQUIRE(editor::submit(ui.desk, change));
        break;
    }
    ui.settle();
}

}  // namespace

TEST_CASE("clicking a finding selects what it concerns", "[editor][findings]") {
    HeadlessUi ui;
    break_box(ui);
    REQUIRE(ui.now().summary.open() > 0);
    REQUIRE(ui.has("Lay out/finding 1"));
    // The list may begin below the edge of the panel.
    ui.move_to(100, 500);
    for (int i = 0; i < 40 && !ui.item("Lay out/finding 1").visible; ++i) {
        ui.input.wheel(0, -1);
        ui.settle();
    }
    ui.click("Lay out/finding 1");
    CHECK_FALSE(ui.desk.ui.selection.subjects.empty());
    CHECK_FALSE(ui.desk.ui.selection.pieces.empty());
}

TEST_CASE("the number of findings leads to them from any place", "[editor][findings]") {
    HeadlessUi ui;
    break_box(ui);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    CHECK_FALSE(ui.has("Lay out/finding 1"));
    ui.click("Consequences/findings");
    CHECK(ui.has("Lay out/finding 1"));
}

TEST_CASE("a finding that names a joint selects the pieces of both its members",
          "[editor][findings]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto& project = editor::project_of(ui.desk);
    const auto& members = project.frames[0].members;
    const model::Finding finding{.code = "test",
                                 .concerns = {{model::SubjectKind::joint, project.frames[0].name,
                                               members[0].name + " + " + members[5].name}}};
    const auto chosen = editor::selection_of(project, ui.now().resolved, finding);
    CHECK(chosen.pieces.size() >= 2);
}

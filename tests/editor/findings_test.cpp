#include "editor/commands.h"
#include "editor/finding_groups.h"
#include "editor/places/section_choice.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using tests::HeadlessUi;

namespace {

// A box of bar that is too narrow for two rivets in every lap.
void start_narrow_box(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    const auto& project = editor::project_of(ui.desk);
    std::vector<std::string> members;
    for (const auto& member : project.frames[0].members) members.push_back(member.name);
    const auto change = editor::section_change(ui.now(), *ui.desk.catalogue, project.frames[0].name,
                                               members, "angle 3/4 x 3/4 x 1/8");
    REQUIRE(editor::submit(ui.desk, change));
    ui.settle();
}

}  // namespace

TEST_CASE("clicking a finding selects what it concerns", "[editor][findings]") {
    HeadlessUi ui;
    start_narrow_box(ui);
    REQUIRE(ui.now().summary.open() > 0);
    REQUIRE(ui.has("Lay out/finding 1"));
    ui.click("Lay out/finding 1");
    CHECK_FALSE(ui.desk.ui.selection.subjects.empty());
    CHECK_FALSE(ui.desk.ui.selection.pieces.empty());
}

TEST_CASE("the number of findings leads to them from any place", "[editor][findings]") {
    HeadlessUi ui;
    start_narrow_box(ui);
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    CHECK_FALSE(ui.has("Prove/finding 1"));
    ui.click("Consequences/findings");
    ui.settle();
    CHECK(ui.has("Prove/finding 1"));
}

TEST_CASE("a finding that names a joint selects the pieces of both its members",
          "[editor][findings]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto& project = editor::project_of(ui.desk);
    const auto& members = project.frames[0].members;
    const std::vector<model::Subject> concerns{{model::SubjectKind::joint, project.frames[0].name,
                                                members[0].name + " + " + members[5].name}};
    const auto chosen = editor::selection_of_subjects(project, ui.now().resolved, concerns);
    CHECK(chosen.pieces.size() >= 2);
}

TEST_CASE("findings that say the same are one card, the worst first", "[editor][findings]") {
    const auto finding = [](const char* code, model::Severity severity, const char* joint) {
        return model::Finding{.code = code,
                              .severity = severity,
                              .concerns = {{model::SubjectKind::joint, "box", joint}},
                              .what = "no rivet fits"};
    };
    const std::vector<model::Finding> findings{finding("few", model::Severity::warning, "a + b"),
                                               finding("none", model::Severity::error, "a + c"),
                                               finding("few", model::Severity::warning, "a + d")};
    const auto groups = editor::finding_groups(findings);
    REQUIRE(groups.size() == 2);
    CHECK(groups[0].findings == std::vector<std::size_t>{1});
    CHECK(groups[1].findings == std::vector<std::size_t>{0, 2});
    CHECK(editor::where_words(groups[0], findings) == "box: joint a + c");
    CHECK(editor::where_words(groups[1], findings) == "2 joints of box");
}

TEST_CASE("the last of very many findings is reached by scrolling and can be clicked",
          "[editor][findings]") {
    HeadlessUi ui;
    model::Project broken;
    for (int i = 0; i < 300; ++i) {
        const auto name = "size " + std::to_string(i);
        broken.dimensions.push_back({.name = name, .formula = "no such thing " + name});
    }
    editor::replace_project(ui.desk, broken, {});
    ui.settle();
    const auto count = ui.now().finding_groups.size();
    REQUIRE(count > 100);
    const std::string last = "Lay out/finding " + std::to_string(count);
    CHECK(ui.has("Lay out/finding 1"));
    CHECK_FALSE(ui.has(last));
    const auto at = ui.item("Lay out/finding 1");
    ui.move_to(at.middle_x(), at.middle_y());
    for (int i = 0; i < 2000 && !ui.has(last); ++i) {
        ui.input.wheel(0, -5);
        ui.frame();
    }
    ui.settle();
    REQUIRE(ui.has(last));
    CHECK_FALSE(ui.has("Lay out/finding 1"));
    const auto& there = ui.item(last);
    ui.click_at(there.middle_x(), there.top + 4);
    CHECK_FALSE(ui.desk.ui.selection.subjects.empty());
}

TEST_CASE("joints of several frames are still called joints", "[editor][findings]") {
    const auto finding = [](const char* frame) {
        return model::Finding{.code = "none",
                              .severity = model::Severity::error,
                              .concerns = {{model::SubjectKind::joint, frame, "a + b"}},
                              .what = "no rivet fits"};
    };
    const std::vector<model::Finding> findings{finding("box"), finding("counter")};
    CHECK(editor::where_words(editor::finding_groups(findings)[0], findings) == "2 joints");
}

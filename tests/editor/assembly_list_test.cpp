#include "editor/assembly_memo.h"
#include "editor/commands.h"
#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>
#include <string>

using tests::HeadlessUi;

namespace {

const editor::AssemblyMemo& assembly_in(HeadlessUi& ui) {
    return editor::assembly_of(ui.desk.ui.make.assembly, ui.now(), *ui.desk.catalogue);
}

void open_assembly(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "make.assembly");
    ui.settle();
}

}  // namespace

TEST_CASE("each joint of a step has its number, its members and its work in the window",
          "[editor][make]") {
    HeadlessUi ui;
    open_assembly(ui);
    const auto& step = assembly_in(ui).order.steps.at(0);
    REQUIRE(step.sets.size() > 3);
    std::set<std::string> told;
    for (std::size_t n = 1; n <= step.sets.size(); ++n) {
        const auto& words = ui.item("Make/joint " + std::to_string(n) + " work").value;
        CHECK_THAT(words, Catch::StartsWith(std::to_string(n) + "   post "));
        CHECK_THAT(words, Catch::Contains(": pin 2 x ") && Catch::Contains(", set 2 x "));
        CHECK(told.insert(words.substr(words.find("post"))).second);
    }
}

TEST_CASE("a click on a joint of a step selects the two pieces that meet there", "[editor][make]") {
    HeadlessUi ui;
    open_assembly(ui);
    ui.click("Make/joint 1");
    const auto& order = assembly_in(ui).order;
    const auto& joint = ui.now().resolved.joints[order.steps.at(0).sets.at(0).joint];
    auto chosen = editor::selected_pieces(editor::project_of(ui.desk), ui.now().resolved,
                                          ui.desk.ui.selection);
    auto meet = std::vector<model::Index>{joint.pieces[0], joint.pieces[1]};
    std::ranges::sort(chosen);
    std::ranges::sort(meet);
    CHECK(chosen == meet);
}

TEST_CASE("the joints of a step are gone through by keys", "[editor][make]") {
    HeadlessUi ui;
    open_assembly(ui);
    const auto& resolved = ui.now().resolved;
    const auto count = assembly_in(ui).order.steps.at(0).sets.size();
    const auto chosen = [&] {
        std::vector<std::size_t> numbers;
        for (std::size_t n = 1; n <= count; ++n) {
            if (ui.item("Make/joint " + std::to_string(n)).value == "chosen") numbers.push_back(n);
        }
        return numbers;
    };
    CHECK(chosen().empty());
    for (std::size_t n = 1; n <= count; ++n) {
        ui.press(editor::key::right);
        CHECK(chosen() == std::vector<std::size_t>{n});
        CHECK(editor::selected_pieces(editor::project_of(ui.desk), resolved, ui.desk.ui.selection)
                  .size() == 2);
    }
    ui.press(editor::key::right);
    CHECK(chosen() == std::vector<std::size_t>{count});
    ui.press(editor::key::left);
    CHECK(chosen() == std::vector<std::size_t>{count - 1});
    // Another step begins without one.
    ui.press(editor::key::down);
    CHECK_FALSE(ui.desk.ui.make.assembly->joint);
    CHECK(ui.item("Make/step").value.rfind("Step 2", 0) == 0);
}

TEST_CASE("no step is counted as nothing: those that carry a part on say so", "[editor][make]") {
    HeadlessUi ui;
    open_assembly(ui);
    const auto steps = assembly_in(ui).order.steps.size();
    std::set<std::string> counts;
    for (std::size_t s = 1; s <= steps; ++s) {
        const auto& count = ui.item("Make/step " + std::to_string(s) + " count").value;
        CHECK_THAT(count, !Catch::StartsWith("0 "));
        counts.insert(count);
    }
    CHECK(counts.count("1 part carried on") == 1);
}

#include "editor/commands.h"
#include "editor/keys.h"
#include "editor/places/section_choice.h"
#include "editor/turned_members.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>

using tests::HeadlessUi;
namespace key = editor::key;

namespace {

// A counter over a wheel well with posts at a divider in its middle.
void start_counter(editor::Desk& desk) {
    const auto& now = editor::derived(desk);
    auto form = editor::starter_form(editor::StarterKind::stepped, now, *desk.catalogue);
    form.dividers = {"24 in"};
    const auto change = editor::starter_change(form, now, *desk.catalogue);
    REQUIRE(change);
    REQUIRE(editor::submit(desk, *change));
}

const std::vector<std::string> middle_posts{"post front divider 1", "post back divider 1"};

}  // namespace

TEST_CASE("flat bar for the middle posts of a counter lies the way that can be riveted",
          "[editor][turned]") {
    HeadlessUi ui;
    start_counter(ui.desk);
    const auto before = ui.desk.history.now();
    const auto edge_on = [&] {
        model::Project plain = *before;
        auto choice = editor::stock_of_section(plain, *ui.desk.catalogue, "flat 1 x 1/8", {});
        plain = model::apply(std::move(plain), *choice.edit).value();
        plain = model::apply(std::move(plain),
                             model::SetMemberStock{"counter", middle_posts, choice.name})
                    .value();
        return editor::derive(std::make_shared<const model::Project>(plain), 0, *ui.desk.catalogue)
            .summary;
    }();
    REQUIRE(edge_on.errors > 0);
    const auto change = editor::section_change(ui.now(), *ui.desk.catalogue, "counter",
                                               middle_posts, "flat 1 x 1/8");
    REQUIRE(editor::submit(ui.desk, change));
    std::string words;
    for (const auto& finding : ui.now().findings) {
        words += model::where_text(finding) + ": " + finding.what + "\n";
    }
    INFO(words);
    CHECK(ui.now().summary.errors == 0);
    CHECK(ui.now().summary.open() < edge_on.open());
    ui.press('Z', key::left_control);
    CHECK(editor::project_of(ui.desk) == *before);
}

TEST_CASE("another section of the same form turns no bar", "[editor][turned]") {
    HeadlessUi ui;
    start_counter(ui.desk);
    const auto change = editor::section_change(ui.now(), *ui.desk.catalogue, "counter",
                                               middle_posts, "angle 3/4 x 3/4 x 1/8");
    const auto turns = std::count_if(
        change.edits.begin(), change.edits.end(),
        [](const model::Edit& edit) { return edit.get_if<model::PutMember>() != nullptr; });
    CHECK(turns == 0);
}

TEST_CASE("a bar is turned over by its key, as one step", "[editor][turned]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto before = ui.desk.history.now();
    ui.desk.ui.selection =
        editor::selection_of(*before, ui.now().resolved, std::vector<model::Index>{0, 1});
    const auto names = ui.desk.ui.selection.pieces;
    ui.press('T');
    int turned = 0;
    for (const auto& member : editor::project_of(ui.desk).frames[0].members) {
        turned += member.turned ? 1 : 0;
    }
    CHECK(turned == 2);
    CHECK(ui.desk.ui.selection.pieces == names);
    ui.press('T');
    CHECK(editor::project_of(ui.desk) == *before);
}

TEST_CASE("nothing is turned where no member is chosen", "[editor][turned]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    CHECK(editor::turn_change(editor::project_of(ui.desk), {{"box", "", 0}}).edits.empty());
    CHECK(editor::turn_change(editor::project_of(ui.desk), {{"none", "post", 0}}).edits.empty());
}

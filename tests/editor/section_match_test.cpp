#include "editor/places/section_match.h"

#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using editor::matching_sections;
using tests::HeadlessUi;
namespace key = editor::key;

namespace {

std::string first_match(const std::string& typed) {
    const auto sections = matching_sections(*tests::test_catalogue(), typed);
    return sections.empty() ? "" : sections.front()->id;
}

// Opens the list of the only stock of a box.
std::string open_list(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    ui.settle();
    const auto& project = editor::project_of(ui.desk);
    const std::string item =
        "Lay out/stock " + project.frames[0].name + " " + project.stock[0].name;
    ui.click(item);
    return item + " list/";
}

}  // namespace

TEST_CASE("the section that was typed in full comes first", "[editor][sections]") {
    CHECK(first_match("angle 1 x 1 x 1/8") == "angle 1 x 1 x 1/8");
    CHECK(first_match("Angle 1 x 1 x 1/8 ") == "angle 1 x 1 x 1/8");
}

TEST_CASE("a size finds the sections that begin with it", "[editor][sections]") {
    CHECK(first_match("1 x 1 x 1/8") == "angle 1 x 1 x 1/8");
    CHECK_THAT(first_match("angle 1 x 1"), Catch::StartsWith("angle 1 x 1 x"));
    CHECK_THAT(first_match("flat 3/4"), Catch::StartsWith("flat 3/4"));
}

TEST_CASE("a text that no section holds finds none", "[editor][sections]") {
    CHECK(matching_sections(*tests::test_catalogue(), "wood").empty());
    CHECK(matching_sections(*tests::test_catalogue(), "").size() ==
          tests::test_catalogue()->sections.size());
}

TEST_CASE("enter takes the marked row, which the arrow keys move", "[editor][sections]") {
    HeadlessUi ui;
    const std::string list = open_list(ui);
    ui.type("angle 3/4");
    const auto sections = matching_sections(*tests::test_catalogue(), "angle 3/4");
    REQUIRE(sections.size() > 2);
    ui.press(key::down);
    ui.press(key::down);
    ui.press(key::up);
    ui.press(key::enter);
    CHECK(editor::project_of(ui.desk).stock.back().section == sections[1]->id);
}

TEST_CASE("typing shows the first match, however far the list was scrolled", "[editor][sections]") {
    HeadlessUi ui;
    const std::string list = open_list(ui);
    for (int i = 0; i < 60; ++i) ui.press(key::down);
    ui.type("angle 1 x 1 x 1/8");
    CHECK(ui.item(list + "angle 1 x 1 x 1/8").visible);
    CHECK(ui.item(list + "angle 1 x 1 x 1/8").value == "chosen");
}

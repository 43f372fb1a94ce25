// How the Lay out place shares out its room, and that nothing jumps under the hand there.
#include "editor/commands.h"
#include "editor/open_project.h"
#include "editor/places/lay_out_sections.h"
#include "editor/places/section_choice.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <string>
#include <utility>
#include <vector>

using tests::HeadlessUi;

namespace {

void open_sample(HeadlessUi& ui, const std::string& name) {
    auto opened = editor::open_project(std::string(BARWRIGHT_SAMPLES) + "/" + name + ".json");
    REQUIRE(opened);
    editor::replace_project(ui.desk, std::move(opened).value(), {});
    editor::run_command(ui.desk, "place.lay_out");
    ui.settle();
}

// Those of which name, strip and band are all above the next section.
int dimensions_in_sight(HeadlessUi& ui) {
    const float end = ui.item("Lay out/fold findings").top;
    int count = 0;
    for (const auto& dimension : editor::project_of(ui.desk).dimensions) {
        if (!ui.has("Lay out/" + dimension.name)) continue;
        const auto& strip = ui.item("Lay out/" + dimension.name);
        const float line_of_band = 19.0F;
        if (strip.visible && strip.bottom + line_of_band <= end) ++count;
    }
    return count;
}

// A box of bar that is too narrow for what is to be fastened in it: several cards.
void start_with_findings(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    const auto& project = editor::project_of(ui.desk);
    std::vector<std::string> members;
    for (const auto& member : project.frames[0].members) members.push_back(member.name);
    const auto change = editor::section_change(ui.now(), *ui.desk.catalogue, project.frames[0].name,
                                               members, "angle 3/4 x 3/4 x 1/8");
    REQUIRE(editor::submit(ui.desk, change));
    auto stock = editor::project_of(ui.desk).stock[0];
    stock.bars.clear();
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutStock{stock, stock.name})));
    ui.settle();
    REQUIRE(ui.now().finding_groups.size() > 2);
}

float top_of_card(HeadlessUi& ui, std::size_t number) {
    return ui.item("Lay out/finding " + std::to_string(number)).top;
}

void check_keeps_its_place(HeadlessUi& ui, std::size_t number) {
    INFO("card " << number);
    const auto name = "Lay out/finding " + std::to_string(number);
    if (!ui.has(name) || !ui.item(name).visible) return;
    const auto at = ui.item(name);
    ui.click_at(at.middle_x(), at.top + 6);
    CHECK(top_of_card(ui, number) == Approx(at.top).margin(1.0));
}

}  // namespace

TEST_CASE("six dimensions are in sight in a small window", "[editor][lay out]") {
    HeadlessUi ui(1280, 720);
    for (const char* sample : {"tool_cabinet", "leaning_locker"}) {
        INFO(sample);
        open_sample(ui, sample);
        CHECK(dimensions_in_sight(ui) >= 6);
        CHECK(ui.item("Lay out/Fastener").visible);  // of the section at the foot
    }
}

TEST_CASE("a section is folded for more room for the others, and stays so at another place",
          "[editor][lay out]") {
    HeadlessUi ui(1280, 720);
    open_sample(ui, "leaning_locker");
    const auto in_sight = dimensions_in_sight(ui);
    ui.click("Lay out/fold findings");
    ui.click("Lay out/fold made of");
    CHECK(dimensions_in_sight(ui) == 8);
    CHECK(dimensions_in_sight(ui) > in_sight);
    CHECK_FALSE(ui.has("Lay out/finding 1"));
    CHECK_FALSE(ui.has("Lay out/Fastener"));
    editor::run_command(ui.desk, "place.join");
    ui.settle();
    editor::run_command(ui.desk, "place.lay_out");
    ui.settle();
    CHECK(ui.item("Lay out/fold made of").value == "folded");
    ui.click("Lay out/fold made of");
    CHECK(ui.item("Lay out/Fastener").visible);
    editor::run_command(ui.desk, "lay_out.fold_dimensions");
    ui.settle();
    CHECK_FALSE(ui.has("Lay out/width"));
}

TEST_CASE("the card of a finding keeps its place when it is clicked", "[editor][lay out]") {
    for (const auto& [width, height] : {std::pair{1280.0F, 720.0F}, {1600.0F, 1000.0F}}) {
        INFO(width);
        HeadlessUi ui(width, height);
        start_with_findings(ui);
        for (const std::size_t number : {2U, 1U, 2U, 3U, 1U, 3U}) check_keeps_its_place(ui, number);
    }
}

TEST_CASE("a card at the end of a scrolled list keeps its place when it is closed",
          "[editor][lay out]") {
    HeadlessUi ui(1280, 720);
    start_with_findings(ui);
    const auto last = ui.now().finding_groups.size();
    for (std::size_t i = 0; i < last; ++i) editor::run_command(ui.desk, "edit.next_finding");
    ui.settle();
    const auto name = "Lay out/finding " + std::to_string(last);
    REQUIRE(ui.has(name));
    check_keeps_its_place(ui, last);
    CHECK_FALSE(ui.has(name + " why"));
    check_keeps_its_place(ui, last);
    CHECK(ui.has(name + " why"));
}

TEST_CASE("the dimensions have what the other sections do not want", "[editor][lay out]") {
    editor::SectionWishes wishes{.dimensions = 900,
                                 .dimensions_first = 300,
                                 .findings = 50,
                                 .findings_open = 50,
                                 .made_of = 60,
                                 .least = 70};
    auto heights = editor::section_heights(wishes, 500);
    CHECK(heights.findings == 50);
    CHECK(heights.made_of == 60);
    CHECK(heights.dimensions == 390);
    wishes.findings = 400;
    wishes.made_of = 400;
    heights = editor::section_heights(wishes, 500);
    CHECK(heights.dimensions == 300);
    CHECK(heights.dimensions + heights.findings + heights.made_of == Approx(500));
    CHECK(heights.made_of >= 70);
    wishes.dimensions = 100;
    heights = editor::section_heights(wishes, 500);
    CHECK(heights.dimensions == Approx(100));
    CHECK(heights.findings + heights.made_of == Approx(400));
}

TEST_CASE("an open card takes its room from what is below the findings", "[editor][lay out]") {
    editor::SectionWishes wishes{.dimensions = 900,
                                 .dimensions_first = 300,
                                 .findings = 90,
                                 .findings_open = 90,
                                 .made_of = 120,
                                 .least = 70};
    const auto closed = editor::section_heights(wishes, 500);
    wishes.findings_open = 190;
    const auto open = editor::section_heights(wishes, 500);
    CHECK(open.dimensions == closed.dimensions);
    CHECK(open.findings > closed.findings);
    CHECK(open.dimensions + open.findings + open.made_of <= Approx(500));
}

TEST_CASE("what the first frame is made of is in sight whole in a small window",
          "[editor][lay out]") {
    HeadlessUi ui(1280, 720);
    for (const char* sample : {"tool_cabinet", "leaning_locker"}) {
        INFO(sample);
        open_sample(ui, sample);
        const auto& project = editor::project_of(ui.desk);
        const auto& choice =
            ui.item("Lay out/stock " + project.frames[0].name + " " + project.stock[0].name);
        CHECK(choice.bottom <= ui.item("Consequences/findings").top - 1);
        CHECK(choice.visible);
    }
}

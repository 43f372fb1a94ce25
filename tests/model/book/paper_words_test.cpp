#include "model/book/plane_scale.h"
#include "model/schedule/page_table.h"
#include "model/schedule/told_text.h"
#include "model/schedule/wrapped_lines.h"

#include "tests/model/book/texts_on_page.h"

#include <catch2/catch.hpp>

#include <numeric>

TEST_CASE("lines are no wider than they may be, and lose nothing", "[model][book][words]") {
    for (const std::string text :
         {"", "one", "one two three four five six seven eight nine ten", "Donaudampfschifffahrt",
          "a verylongwordthatfitsnowhereatall b", "  spaces   kept  "}) {
        for (const double width : {8.0, 20.0, 60.0}) {
            CAPTURE(text, width);
            const auto lines = model::wrapped_lines(text, 3.5, width);
            REQUIRE_FALSE(lines.empty());
            std::string all;
            for (const auto& line : lines) {
                CHECK(engine::text_width(line, 3.5) <= width);
                for (const char c : line)
                    if (c != ' ') all += c;
            }
            std::string wanted;
            for (const char c : text)
                if (c != ' ') wanted += c;
            CHECK(all == wanted);
        }
    }
}

TEST_CASE("a letter that is wider than the line still comes to paper", "[model][book][words]") {
    CHECK(model::wrapped_lines("WW", 3.5, 0.5) == std::vector<std::string>{"W", "W"});
}

TEST_CASE("what is shortened fits, and says that it is", "[model][book][words]") {
    CHECK(model::shortened("short", 3.5, 100.0) == "short");
    const auto cut = model::shortened("a name that is far too long for its place", 3.5, 30.0);
    CHECK(engine::text_width(cut, 3.5) <= 30.0);
    CHECK_THAT(cut, Catch::EndsWith("\u2026"));
}

TEST_CASE("places of planes keep their distance where there is no room for all",
          "[model][book][words]") {
    engine::Page page(engine::Paper::a4);
    std::vector<model::PlanePlace> places;
    for (int i = 0; i < 9; ++i) places.push_back({i, {}, "plane " + std::to_string(i)});
    std::vector<model::PlaneOnPage> planes;
    for (const auto& place : places)
        planes.push_back({&place, 100.0 + static_cast<double>(planes.size())});
    model::draw_plane_scale_beside(page, planes, {90.0, 95.0, 60.0, 20.0});
    CHECK(tests::texts_on(page).size() == places.size());
    CHECK(tests::clash_on(page).empty());
}

TEST_CASE("a table has its heads on every page that it comes to", "[model][book][table]") {
    model::PageFlow flow{engine::paper_size(engine::Paper::a4)};
    std::vector<model::TableCells> rows;
    for (int i = 0; i < 120; ++i) rows.push_back({"A" + std::to_string(i), "a piece"});
    model::draw_table(flow, {{.head = "Mark"}, {.head = "What"}}, rows);
    REQUIRE(flow.pages().size() > 1);
    for (const auto& page : flow.pages()) {
        int heads = 0;
        for (const auto& item : page.items()) {
            const auto* text = std::get_if<engine::DrawnText>(&item);
            if (text != nullptr && text->text == "Mark") ++heads;
        }
        CHECK(heads == 1);
    }
}

TEST_CASE("a length that lies on no mark is told to the nearest hundredth of a millimetre",
          "[model][book]") {
    using engine::Length;
    const engine::TapeStyle inches{.with_unit = true};
    const engine::TapeStyle millimetres{
        .form = engine::TapeForm::millimetre, .decimals = 1, .with_unit = true};
    CHECK(model::told_text(Length::from_nm(417'247'917), inches) == "417.25 mm");
    CHECK(model::told_text(Length::from_nm(417'247'917), millimetres) == "417.25 mm");
    CHECK(model::told_text(Length::from_nm(-1'587'500), millimetres) == "-1.59 mm");
    // 27/64 in is a mark of the finest tape, and stays what it is.
    CHECK(model::told_text(Length::from_nm(27 * 396'875), inches) == "27/64 in");
}

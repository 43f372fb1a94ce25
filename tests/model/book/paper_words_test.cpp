#include "model/book/plane_scale.h"
#include "model/schedule/kept_together.h"
#include "model/schedule/page_table.h"
#include "model/schedule/told_text.h"
#include "model/schedule/wrapped_lines.h"

#include "tests/model/book/texts_on_page.h"

#include <catch2/catch.hpp>

#include <algorithm>
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

TEST_CASE("a number keeps its fraction and its unit on its line, whatever the width",
          "[model][book][words]") {
    const std::string text =
        "Both diagonals of face well front (~57 9/32 in) and of top, measure ~60 15/16 in; 2 x "
        "blind rivet 1/8, grip 4-4, or 4 ft 6 1/2 in, 1' 6 3/8\", 1454.7 mm. Joints 7, 9 in order.";
    const std::vector<std::string> measures{"(~57 9/32 in)",  "~60 15/16 in;", "grip 4-4,",
                                            "4 ft 6 1/2 in,", "1' 6 3/8\",",   "1454.7 mm."};
    double widest = 0.0;
    for (const auto& measure : measures)
        widest = std::max(widest, engine::text_width(measure, 3.5));
    for (double width = widest; width < 160.0; width += 0.5) {
        const auto lines = model::wrapped_lines(text, 3.5, width);
        for (const auto& measure : measures) {
            CAPTURE(width, measure);
            CHECK(std::ranges::count_if(lines, [&](const std::string& line) {
                      return line.find(measure) != std::string::npos;
                  }) == 1);
        }
    }
    // Wider than its line it is broken where its words end.
    CHECK(model::wrapped_lines("~57 9/32 in", 3.5, engine::text_width("~57 9/32", 3.5) + 0.1) ==
          std::vector<std::string>{"~57 9/32", "in"});
}

TEST_CASE("what only looks like a measure is broken as ever", "[model][book][words]") {
    for (const std::string text : {"joints 7, 9", "9, in this order", "sheet pin 1/8", "step 5"}) {
        CAPTURE(text);
        CHECK(model::kept_together(text).size() == model::words_of(text).size());
    }
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

#include "model/book/spread.h"
#include "model/schedule/page_table.h"
#include "model/schedule/wrapped_lines.h"

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

TEST_CASE("places that are far apart stay where they are", "[model][book][spread]") {
    CHECK(model::spread({1.0, 10.0, 30.0}, 5.0, 0.0, 40.0) == std::vector<double>{1.0, 10.0, 30.0});
}

TEST_CASE("places that are close give way to both sides", "[model][book][spread]") {
    CHECK(model::spread({10.0, 10.0}, 4.0, 0.0, 40.0) == std::vector<double>{8.0, 12.0});
    CHECK(model::spread({1.0, 1.0}, 4.0, 0.0, 40.0) == std::vector<double>{0.0, 4.0});
    CHECK(model::spread({39.0, 39.0}, 4.0, 0.0, 40.0) == std::vector<double>{36.0, 40.0});
}

TEST_CASE("places keep their distance where there is no room for all", "[model][book][spread]") {
    const auto places = model::spread({1.0, 2.0, 3.0, 4.0}, 5.0, 0.0, 10.0);
    REQUIRE(places.size() == 4);
    for (std::size_t i = 1; i < places.size(); ++i) CHECK(places[i] - places[i - 1] == Approx(5.0));
    CHECK(places.front() == 0.0);
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

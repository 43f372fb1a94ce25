// Rows that go on over pages, and the tables made of them.
#include "model/schedule/balanced_rows.h"

#include "model/schedule/page_table.h"

#include "tests/model/book/texts_on_page.h"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

namespace {

constexpr engine::PaperSize small{100.0, 90.0};  // of which 60 mm are for rows

// How many rows of 10 mm stand on each page, behind a head of that height.
std::vector<int> rows_on_pages(std::size_t count, double head = 0.0) {
    model::PageFlow flow(small);
    flow.skip(head);
    std::vector<int> rows;
    model::draw_balanced(flow, count, [&](std::size_t, bool) {
        flow.make_room(10.0);
        flow.text("row", {.size = 3.0}, 10.0);
    });
    for (const auto& page : flow.pages())
        rows.push_back(static_cast<int>(tests::texts_on(page).size()));
    return rows;
}

}  // namespace

TEST_CASE("the last page of rows does not hold a row or two alone", "[model][schedule][pages]") {
    CHECK(rows_on_pages(6) == std::vector<int>{6});
    CHECK(rows_on_pages(7) == std::vector<int>{3, 4});
    CHECK(rows_on_pages(10) == std::vector<int>{6, 4});
    CHECK(rows_on_pages(13) == std::vector<int>{6, 3, 4});
    CHECK(rows_on_pages(14) == std::vector<int>{6, 4, 4});
}

TEST_CASE("the page that ends earlier keeps two rows", "[model][schedule][pages]") {
    CHECK(rows_on_pages(5, 20.0) == std::vector<int>{2, 3});
    CHECK(rows_on_pages(4, 30.0) == std::vector<int>{2, 2});
    CHECK(rows_on_pages(3, 40.0) == std::vector<int>{2, 1});
}

TEST_CASE("a table has its heads above the rows of each page, also where one ends earlier",
          "[model][schedule][pages]") {
    const std::vector<model::TableColumn> columns{{.head = "Head"}};
    for (std::size_t count = 1; count < 40; ++count) {
        model::PageFlow flow(small);
        model::draw_table(flow, columns, std::vector<model::TableCells>(count, {"row"}));
        std::size_t rows = 0;
        for (const auto& page : flow.pages()) {
            const auto texts = tests::texts_on(page);
            CAPTURE(count);
            REQUIRE_FALSE(texts.empty());
            CHECK(texts.front().text == "Head");
            rows += texts.size() - 1;
            const bool is_last = &page == &flow.pages().back();
            if (is_last && flow.pages().size() > 1) CHECK(texts.size() - 1 >= 4);
        }
        CHECK(rows == count);
    }
}

TEST_CASE("a table of a few rows is not broken", "[model][schedule][pages]") {
    const std::vector<model::TableColumn> columns{{.head = "Head"}};
    for (double head = 0.0; head < 60.0; head += 1.0) {
        model::PageFlow flow(small);
        flow.text("above", {.size = 3.0}, head);
        model::draw_table(flow, columns, std::vector<model::TableCells>(5, {"row"}));
        const auto on_last = tests::texts_on(flow.pages().back()).size();
        CHECK(on_last == (flow.pages().size() == 1 ? 7U : 6U));
    }
}

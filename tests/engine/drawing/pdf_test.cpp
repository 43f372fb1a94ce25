#include "engine/drawing/pdf.h"

#include "tests/engine/drawing/pdf_file.h"
#include "tests/engine/drawing/sample_pages.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <thread>

using namespace engine;
using tests::count_of;
using tests::pdf_of;
using tests::PdfFile;

namespace {

Error refusal_of(const Document& document) {
    const auto bytes = pdf_bytes(document);
    REQUIRE(!bytes);
    return bytes.error();
}

// The darkness of a row or column in whole pixels.
double darkness(const tests::GreyPicture& picture, bool is_row, int at) {
    double sum = 0;
    for (int i = 0; i < (is_row ? picture.width : picture.height); ++i)
        sum += (255 - (is_row ? picture.at(i, at) : picture.at(at, i))) / 255.0;
    return sum;
}

}  // namespace

TEST_CASE("a line of 100 mm is 283.465 points long in the page stream", "[engine][drawing]") {
    Page page{Paper::a4};
    page.draw_line({30, 50}, {130, 50});
    page.draw_line({31.7, 60.3}, {31.7, 160.3});
    const PdfFile file{{"Lines", {page}, {}}};
    const auto strokes = tests::traced_strokes(file.path);
    REQUIRE(strokes.size() == 2);
    for (const auto& stroke : strokes) {
        REQUIRE(stroke.size() == 2);
        const double length = std::hypot(stroke[1].x - stroke[0].x, stroke[1].y - stroke[0].y);
        CHECK(length == Approx(283.465).margin(0.0045));  // points; 0.0016 mm
    }
    CHECK(strokes[0][0].x == Approx(30 * 72 / 25.4).margin(0.0025));
    CHECK(strokes[0][0].y == Approx(50 * 72 / 25.4).margin(0.0025));
}

TEST_CASE("a line of 100 mm is 1000 pixels long at 254 dpi", "[engine][drawing]") {
    Page page{Paper::letter};
    page.draw_line({30.03, 50}, {130.03, 50}, {.width = 2.0});
    page.draw_line({150, 60.06}, {150, 160.06}, {.width = 2.0});
    const PdfFile file{{"Lines", {page}, {}}};
    const auto picture = tests::drawn_by_poppler(file.path, 254);
    CHECK(darkness(picture, true, 500) == Approx(1000.0).margin(0.3));  // 0.03 mm
    CHECK(darkness(picture, false, 1500) == Approx(1000.0).margin(0.3));
}

TEST_CASE("circles and arcs are where they were drawn", "[engine][drawing]") {
    Page page{Paper::a4};
    page.draw_circle({60, 80}, 25.0);
    page.draw_arc({60, 150}, 25.0, 0.0, 90.0);
    page.draw_arc({60, 150}, 25.0, 90.0, -90.0);
    const PdfFile file{{"Arcs", {page}, {}}};
    const auto strokes = tests::traced_strokes(file.path);
    REQUIRE(strokes.size() == 3);
    REQUIRE(strokes[0].size() >= 5);
    for (const auto& [x, y] : strokes[0])
        CHECK(std::hypot(x * 25.4 / 72 - 60, y * 25.4 / 72 - 80) == Approx(25.0).margin(0.002));
    for (const std::size_t arc : {1U, 2U}) {
        CHECK(strokes[arc].front().x == Approx(85 * 72 / 25.4).margin(0.005));
        CHECK(strokes[arc].front().y == Approx(150 * 72 / 25.4).margin(0.005));
        CHECK(strokes[arc].back().x == Approx(60 * 72 / 25.4).margin(0.005));
        CHECK(strokes[arc].back().y == Approx(125 * 72 / 25.4).margin(0.005));
    }
}

TEST_CASE("what is clipped is not printed outside of its box", "[engine][drawing]") {
    Page page{Paper::a4};
    page.draw_clipped({50, 50, 20, 20}, [&] {
        page.draw_rectangle({0, 0, 210, 297}, filled(Ink::black));
    });
    page.draw_rectangle({100, 100, 10, 10}, filled(Ink::black));
    const PdfFile file{{"Clip", {page}, {}}};
    const auto picture = tests::drawn_by_poppler(file.path, 127);  // 5 pixels a mm
    CHECK(picture.at(5 * 60, 5 * 60) == 0);
    CHECK(picture.at(5 * 49, 5 * 60) == 255);
    CHECK(picture.at(5 * 60, 5 * 71) == 255);
    CHECK(picture.at(5 * 105, 5 * 105) == 0);
}

TEST_CASE("pages have the size of their paper", "[engine][drawing]") {
    const PdfFile file{tests::sample_document()};
    const std::string about = tests::output_of("pdfinfo -l 4 " + file.path.string());
    CAPTURE(about);
    CHECK(count_of(about, "595.276 x 841.89 pts (A4)") == 1);
    CHECK(count_of(about, "1190.55 x 841.89 pts (A3)") == 1);
    CHECK(count_of(about, "612 x 792 pts (letter)") == 1);
    CHECK(count_of(about, "1224 x 792 pts") == 1);
    CHECK(count_of(about, "Title:           Bars of the tool counter\n") == 1);
}

TEST_CASE("bookmarks lead to their pages, on their levels", "[engine][drawing]") {
    Document document = tests::sample_document();
    document.bookmarks.push_back({"Too deep", 2, 7});
    const PdfFile file{document};
    const std::string outline = tests::output_of("mutool show " + file.path.string() + " outline");
    CAPTURE(outline);
    CHECK(outline.find("\"Sheet a3\"\t#page=2&") != std::string::npos);
    CHECK(outline.find("-\t\t\"Bars \u2220\"\t#page=4&") != std::string::npos);
    CHECK(outline.find("|\t\t\t\"Too deep\"\t#page=3&") != std::string::npos);
}

TEST_CASE("the same document is the same bytes, from several threads at once too",
          "[engine][drawing]") {
    const Document document = tests::sample_document();
    const std::string first = pdf_of(document);
    std::vector<std::string> others(4);
    {
        std::vector<std::jthread> threads;
        for (std::string& other : others)
            threads.emplace_back([&] { other = pdf_bytes(document).value(); });
    }
    for (const std::string& other : others) CHECK(other == first);
}

TEST_CASE("an empty page is printed", "[engine][drawing]") {
    const PdfFile file{{"", {Page{Paper::a4}, Page{Paper::letter}}, {}}};
    CHECK(count_of(tests::output_of("pdfinfo " + file.path.string()), "Pages:           2\n") == 1);
}

TEST_CASE("a document that cannot be printed is refused with the page's number",
          "[engine][drawing]") {
    const Page good{Paper::a4};
    CHECK(refusal_of({"", {}, {}}).message == "there is no page to draw");
    CHECK(to_text(refusal_of({"", {good}, {{"Index", 1, 0}}})) ==
          "bookmark Index: leads to page 2 of 1");
    const double infinite = std::numeric_limits<double>::infinity();
    for (const double side : {0.0, -10.0, 5081.0, infinite, std::nan("")}) {
        CHECK(refusal_of({"", {good, Page{PaperSize{210, side}}}, {}}).where ==
              "page 2, the page's size");
    }
    Page bad{Paper::a4};
    bad.draw_line({0, 0}, {std::nan(""), 0});
    CHECK(to_text(refusal_of({"", {good, bad}, {}})).rfind("page 2: a line cannot be drawn", 0) ==
          0);
}

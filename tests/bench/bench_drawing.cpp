// Pages on paper: what a page of 500 things costs, drawn and written as PDF and as SVG, in
// documents of 1, 10 and 100 pages. Usage: bench_drawing
// Figures compare within one run; absolute times depend on the machine and its load.
#include "engine/drawing/pdf.h"
#include "engine/drawing/svg.h"

#include "tests/bench/must.h"
#include "tests/bench/processor_time.h"

#include <cstddef>
#include <cstdio>
#include <string>

namespace {

// 100 bars' worth of things: an outline, a hatch, a line, a circle and a text each.
engine::Page bench_page(std::size_t number) {
    engine::Page page{engine::Paper::a4};
    for (std::size_t i = 0; i < 100; ++i) {
        const double left = 10.0 + 19.0 * static_cast<double>(i % 10);
        const double top = 15.0 + 28.0 * static_cast<double>(i / 10);
        page.draw_rectangle({left, top, 18.0, 8.0}, {.fill = engine::Ink::grey_10});
        page.draw_hatch({left, top + 10.0, 18.0, 4.0});
        page.draw_line({left, top + 16.0}, {left + 18.0, top + 16.0});
        page.draw_circle({left + 9.0, top + 4.0}, 1.6);
        page.draw_text({left, top + 21.0}, "A" + std::to_string(number) + " 18 3/8 \u2300");
    }
    tests::must(page.items().size() == 500, "the page holds 500 things");
    return page;
}

engine::Document bench_document(std::size_t pages) {
    engine::Document document{"Bench", {}, {}};
    for (std::size_t i = 0; i < pages; ++i) {
        document.bookmarks.push_back({"Page " + std::to_string(i + 1), i, 0});
        document.pages.push_back(bench_page(i));
    }
    return document;
}

void print_row(std::size_t pages) {
    const auto count = static_cast<double>(pages);
    const int runs = pages >= 100 ? 3 : 15;
    const double drawn = tests::median_ms(runs, [&] { static_cast<void>(bench_document(pages)); });
    const engine::Document document = bench_document(pages);
    std::size_t pdf_bytes = 0;
    const double pdf = tests::median_ms(runs, [&] {
        const auto bytes = engine::pdf_bytes(document);
        tests::must(bytes.has_value(), "the PDF is made");
        pdf_bytes = bytes->size();
    });
    std::size_t svg_bytes = 0;
    const double svg = tests::median_ms(runs, [&] {
        svg_bytes = 0;
        for (const engine::Page& page : document.pages)
            svg_bytes += engine::svg_text(page).value().size();
    });
    std::printf(
        "%5zu pages  per page: drawn %6.3f ms  PDF %7.3f ms %6.1f KiB  SVG %6.3f ms %6.1f KiB\n",
        pages, drawn / count, pdf / count, static_cast<double>(pdf_bytes) / 1024.0 / count,
        svg / count, static_cast<double>(svg_bytes) / 1024.0 / count);
}

}  // namespace

int main() {
    for (const std::size_t pages : {1U, 10U, 100U}) print_row(pages);
    return 0;
}

// The shop book: what the pages of a project of so many members cost to draw, and to write as a
// PDF; the bars are nested before. Usage: bench_book [MEMBERS]   (default: 200)
// Figures are processor time, medians, and compare within one run.
#include "engine/drawing/pdf.h"
#include "model/book/book.h"
#include "model/resolve/resolve.h"

#include "tests/bench/bench_projects.h"
#include "tests/bench/must.h"
#include "tests/bench/processor_time.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>

namespace {

void print_row(tests::BenchShape shape, int members) {
    const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS);
    tests::must(catalogue.has_value(), "the catalogue is read");
    const auto project = tests::bench_project(shape, members);
    const auto resolved = model::resolve(project, *catalogue);
    model::BookSupply supply;
    supply.plans =
        model::bar_plans(project, *catalogue, resolved, {.effort = model::PlanEffort::first_fit});
    supply.estimate = model::estimate_of(project, *catalogue, resolved, supply.plans, {});
    engine::Document book;
    const double drawn = tests::median_ms(5, [&] {
        book = model::shop_book(project, *catalogue, resolved, supply, engine::Paper::a4);
    });
    std::string pdf;
    const double written = tests::median_ms(5, [&] {
        auto bytes = engine::pdf_bytes(book);
        tests::must(bytes.has_value(), "the PDF is made");
        pdf = std::move(bytes).value();
    });
    std::size_t things = 0;
    std::size_t most = 0;
    for (const auto& page : book.pages) {
        things += page.items().size();
        most = std::max(most, page.items().size());
    }
    std::printf(
        "%s: %zu pieces, %zu pages, %zu things, %zu on the fullest page: drawn %.0f ms, PDF %.0f "
        "ms, together %.0f ms, %.0f KiB\n",
        std::string(tests::name_of(shape)).c_str(), resolved.pieces.size(), book.pages.size(),
        things, most, drawn, written, drawn + written, static_cast<double>(pdf.size()) / 1024.0);
}

}  // namespace

int main(int argc, char** argv) {
    const int members = argc > 1 ? std::max(1, std::atoi(argv[1])) : 200;
    for (const auto shape : {tests::BenchShape::cabinets, tests::BenchShape::lattice})
        print_row(shape, members);
    return 0;
}

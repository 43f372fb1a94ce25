#include "model/book/book_files.h"

#include "engine/drawing/pdf.h"
#include "engine/files/whole_file.h"
#include "model/book/book.h"
#include "model/book/changed_pages.h"
#include "model/buying/buying_files.h"
#include "model/buying/comparison.h"
#include "model/schedule/findings.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

bool are_with_errors(const std::vector<Finding>& findings) {
    return std::ranges::count(findings, Severity::error, &Finding::severity) > 0;
}

}  // namespace

engine::Result<BookFiles> book_files(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     const PriceLibrary& library,
                                     const BookWish& wish) {
    const auto from = supplier_wished(project, library, wish.supplier);
    if (!from) return from.error();
    const auto bars = supply_of(project, resolved, *from);
    BookSupply supply;
    supply.plans = bar_plans(project, catalogue, resolved, {.supply = bars, .go_on = wish.go_on});
    supply.estimate = estimate_of(project, catalogue, resolved, supply.plans, *from);
    supply.prices = from->prices;
    supply.findings = all_findings(project, catalogue, resolved, bars);
    BookFiles files;
    for (const auto& plan : supply.plans)
        files.words.push_back(plan_verdict(project, plan, supply.estimate.currency));
    for (const auto& line : files.words)
        supply.verdict += (supply.verdict.empty() ? "" : "; ") + line;
    const auto document = shop_book(project, catalogue, resolved, supply, wish.paper);
    auto pdf = engine::pdf_bytes(document);
    if (!pdf) return pdf.error();
    files.pdf = std::move(pdf).value();
    files.stamps = stamps_text(book_stamps(project, catalogue, resolved));
    files.pages = document.pages.size();
    files.has_errors = are_with_errors(supply.findings);
    return files;
}

engine::Result<ChangedBook> changed_book(const Project& project,
                                         const Catalogue& catalogue,
                                         const Resolved& resolved,
                                         const PriceLibrary& library,
                                         const BookStamps& since,
                                         const BookWish& wish) {
    const auto from = supplier_wished(project, library, wish.supplier);
    if (!from) return from.error();
    ChangedBook changed;
    changed.has_errors = are_with_errors(
        all_findings(project, catalogue, resolved, supply_of(project, resolved, *from)));
    changed.marks = changed_marks(since.marks, project, catalogue, resolved);
    const auto document =
        changed_pages(project, catalogue, resolved, changed.marks, wish.paper, changed.has_errors);
    if (document.pages.empty()) return changed;
    auto pdf = engine::pdf_bytes(document);
    if (!pdf) return pdf.error();
    changed.pdf = std::move(pdf).value();
    changed.pages = document.pages.size();
    return changed;
}

std::filesystem::path stamps_beside(const std::filesystem::path& book) {
    auto beside = book;
    return beside.replace_extension(".stamps.json");
}

engine::Result<engine::Done> write_book(const BookFiles& files, const std::filesystem::path& book) {
    if (const auto written = engine::write_whole_file(book, files.pdf); !written) return written;
    return engine::write_whole_file(stamps_beside(book), files.stamps);
}

}  // namespace model

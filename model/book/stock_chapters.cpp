#include "model/book/book_chapters.h"
#include "model/book/works_in.h"
#include "model/buying/sheet_layout.h"
#include "model/buying/sheet_pages.h"
#include "model/buying/shopping_page.h"
#include "model/schedule/bar_pages.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/page_table.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/pieces_by_mark.h"
#include "model/schedule/sheet.h"

namespace model {
namespace {

using engine::LetterWeight;
using engine::TextAnchor;

constexpr TextAnchor to_end = TextAnchor::end;
constexpr LetterWeight bold = LetterWeight::bold;

// Of bars, or of parts of sheet, which have a width too and are named by their kind already.
std::vector<TableCells> cuts_of(const BookOf& of, const std::vector<CutRow>& rows, bool sheet) {
    std::vector<TableCells> cells;
    for (const auto& row : rows) {
        if (is_of_sheet(row.kind) != sheet) continue;
        TableCells cut{"",
                       of.resolved.marks[row.mark].name,
                       std::string(name_of(row.hand)),
                       std::to_string(row.quantity),
                       length_on_paper(of.project, row.length),
                       decimal_mm(row.length)};
        if (sheet) {
            cut.push_back(length_on_paper(of.project, row.width));
            cut.push_back(decimal_mm(row.width));
        } else {
            cut.emplace_back(name_of(row.kind));
        }
        for (const auto& it : {row.section, std::string(row.alloy), row.end_a, row.end_b})
            cut.emplace_back(it);
        cells.push_back(std::move(cut));
    }
    return cells;
}

void draw_cuts(PageFlow& flow, const std::vector<TableCells>& cells, bool sheet) {
    std::vector<TableColumn> columns{{.head = "", .is_box = true},
                                     {.head = "Mark", .weight = bold},
                                     {.head = "Hand"},
                                     {.head = "Pieces", .anchor = to_end},
                                     {.head = "Length", .anchor = to_end, .weight = bold},
                                     {.head = "mm", .anchor = to_end}};
    if (sheet) {
        columns.push_back({.head = "Width", .anchor = to_end, .weight = bold});
        columns.push_back({.head = "mm", .anchor = to_end});
    } else {
        columns.push_back({.head = "What"});
    }
    columns.push_back({.head = sheet ? "What" : "Section"});
    for (const auto* head : {sheet ? "Material" : "Alloy", "Datum end", "Far end"})
        columns.push_back({.head = head});
    draw_table(flow, columns, cells);
}

void draw_cut_list(PageFlow& flow, const BookOf& of) {
    const auto rows = cut_rows(of.project, of.catalogue, of.resolved);
    draw_page_head(flow, "Cut list",
                   "Lengths run from long point to long point. Before a piece leaves the saw, "
                   "write its mark and hand on it and mark its datum end, from which holes are "
                   "measured; \"opposite\" is the mirror image of \"as drawn\".");
    draw_cautions(flow, of.resolved, {Work::cutting, Work::deburring});
    if (rows.empty()) draw_words(flow, "There is no piece to cut yet.");
    const auto bars = cuts_of(of, rows, false);
    if (!bars.empty()) draw_cuts(flow, bars, false);
    const auto sheets = cuts_of(of, rows, true);
    if (sheets.empty()) return;
    draw_part_head(flow, "Of sheet");
    draw_cuts(flow, sheets, true);
}

}  // namespace

void add_buying(BookPages& book, const BookOf& of) {
    const auto& estimate = of.supply.estimate;
    PageFlow flow = book.flow();
    draw_page_head(flow, "What to buy", shopping_words(estimate));
    draw_shopping(flow, estimate);
    book.begin_chapter("What to buy");
    book.add(flow.pages());
}

void add_cutting(BookPages& book, const BookOf& of) {
    PageFlow flow = book.flow(engine::PaperTurn::landscape);
    draw_cut_list(flow, of);
    book.begin_chapter("What to cut");
    book.begin_part("Cut list");
    book.add(flow.pages());
    const auto rows = bar_rows(of.project, of.catalogue, of.resolved, of.supply.plans);
    auto pages = bar_pages(of.project, of.resolved,
                           saw_bars(of.project, of.catalogue, of.resolved, of.supply.plans),
                           stop_rows(of.project, of.catalogue, of.resolved, rows),
                           {.title = "Bars", .verdict = of.supply.verdict}, book.paper());
    add_sheet_pages(pages, of.project, of.resolved,
                    sheet_plans(of.project, of.catalogue, of.resolved, of.supply.prices,
                                paid_sheets(of.supply.estimate.paid)),
                    sheet_rows(of.project, of.catalogue, of.resolved), book.paper());
    std::size_t next = 0;
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
        for (; next < pages.bookmarks.size() && pages.bookmarks[next].page == i; ++next)
            book.begin_part(pages.bookmarks[next].title);
        book.add({pages.pages[i]});
    }
}

}  // namespace model

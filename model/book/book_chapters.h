// The chapters that are tables: what to buy, what to cut, fasteners, checks, and the index.
#pragma once

#include "model/book/book.h"
#include "model/book/book_pages.h"

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace model {

struct BookOf {
    const Project& project;
    const Catalogue& catalogue;
    const Resolved& resolved;
    const BookSupply& supply;
};

void add_buying(BookPages& book, const BookOf& of);

// The list of cuts, then the bars with their stop positions, then the sheets.
void add_cutting(BookPages& book, const BookOf& of);

void add_fasteners(BookPages& book, const BookOf& of, const AssemblyOrder& order);

// Each mark and hand with boxes to tick: what is cut, deburred and drilled.
void draw_progress(PageFlow& flow, const BookOf& of);

// Diagonals and what is looked at before the next kind of work begins, with boxes to sign.
void add_checks(BookPages& book, const BookOf& of, const AssemblyOrder& order);

// Where a mark is drawn, as drawn and of the opposite hand, by Resolved::marks, pages counted from
// 0; none where it is in no drawing.
using PagesOfMarks = std::vector<std::array<std::optional<std::size_t>, 2>>;

void add_index(BookPages& book, const BookOf& of, const PagesOfMarks& drawn);

}  // namespace model

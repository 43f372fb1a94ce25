// The first page: what it is, how it looks, what it comes to, and what must be known before.
#pragma once

#include "model/book/book.h"
#include "model/book/book_pages.h"

namespace model {

void add_cover(BookPages& book,
               const Project& project,
               const Catalogue& catalogue,
               const Resolved& resolved,
               const BookSupply& supply);

}  // namespace model

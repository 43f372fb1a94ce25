// Each typical corner on paper: a section through the lap, and what it is made of.
#pragma once

#include "model/book/book_pages.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

namespace model {

// A chapter of its own; nothing where there is no joint with a fastener.
void add_corner_pages(BookPages& book,
                      const Project& project,
                      const Catalogue& catalogue,
                      const Resolved& resolved);

}  // namespace model

// The shop book as a file, and its stamps beside it.
#pragma once

#include "engine/drawing/paper.h"
#include "engine/result.h"
#include "model/book/stamp.h"
#include "model/buying/price_library.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace model {

struct BookWish {
    std::string supplier;  // whose prices; empty: the one that the shop has chosen, or none
    engine::Paper paper = engine::Paper::a4;
    std::function<bool()> go_on;  // of PlanWish; may be empty
};

struct BookFiles {
    std::string pdf;
    std::string stamps;  // stamps_text
    std::size_t pages = 0;
    std::vector<std::string> words;  // what there is to say of it, a line each
    bool has_errors = false;         // findings say that it is not fit to cut from
};

// Errors: those of supplier_wished and of pdf_bytes.
engine::Result<BookFiles> book_files(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     const PriceLibrary& library,
                                     const BookWish& wish);

// The drawings of marks that are others now than those of an earlier book.
struct ChangedBook {
    std::string pdf;  // empty where no drawing is another
    std::size_t pages = 0;
    std::vector<Index> marks;  // that are drawn otherwise, or are new
    bool has_errors = false;   // as of the book
};

// Errors: as those of book_files.
engine::Result<ChangedBook> changed_book(const Project& project,
                                         const Catalogue& catalogue,
                                         const Resolved& resolved,
                                         const PriceLibrary& library,
                                         const BookStamps& since,
                                         const BookWish& wish);

// "counter.pdf" has "counter.stamps.json" beside it.
std::filesystem::path stamps_beside(const std::filesystem::path& book);

// Writes both, each whole or not at all. Error: cannot_write.
engine::Result<engine::Done> write_book(const BookFiles& files, const std::filesystem::path& book);

}  // namespace model

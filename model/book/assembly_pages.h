// The order of assembly on paper: each step with what is put on, pinned, measured and set, boxes to
// sign, and a picture in which what is new is drawn bold.
#pragma once

#include "model/assembly/assembly_order.h"
#include "model/book/book_chapters.h"
#include "model/book/book_pages.h"

namespace model {

// A chapter, with a part for each frame; nothing where there is no step.
void add_assembly(BookPages& book, const BookOf& of, const AssemblyOrder& order);

}  // namespace model

// Drawn pages for tests and benches: everything that a page can hold.
#pragma once

#include "engine/drawing/document.h"

namespace tests {

// A bar in pieces with its dimensions, a section, strings in both weights, of both fonts and
// turned.
engine::Page sample_page(engine::PaperSize size);

// A page of each paper, with bookmarks on two levels.
engine::Document sample_document();

}  // namespace tests

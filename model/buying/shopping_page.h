// What is to be bought, on paper: a line for each thing with a box to tick, sums, and what was
// paid.
#pragma once

#include "engine/drawing/document.h"
#include "model/buying/estimate.h"
#include "model/schedule/page_flow.h"

#include <string>

namespace model {

// "From the yard, delivered." or at whose prices.
std::string shopping_words(const Estimate& estimate);

// From where the flow stands.
void draw_shopping(PageFlow& flow, const Estimate& estimate);

// Pages of their own, not numbered yet, with their bookmark.
void add_shopping_pages(engine::Document& document,
                        const std::string& title,
                        const Estimate& estimate,
                        engine::Paper paper);

}  // namespace model

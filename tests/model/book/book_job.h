// Projects whose books are looked at, and what stands on their pages.
#pragma once

#include "engine/drawing/document.h"
#include "model/book/book.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolve.h"

#include <string>
#include <vector>

namespace tests {

const model::Catalogue& book_catalogue();

// By file name, in order: each once.
std::vector<std::string> sample_names();
model::Project sample(const std::string& name);

struct BookJob {
    model::Project project;
    model::Resolved resolved;
    model::BookSupply supply;
};

BookJob book_job(model::Project project);

engine::Document book_of(const BookJob& job, engine::Paper paper = engine::Paper::a4);

// All texts of its pages in the order in which they were drawn, a space between two.
std::string words_in(const engine::Document& document);

}  // namespace tests

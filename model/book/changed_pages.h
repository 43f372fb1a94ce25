// The drawings of some marks alone, for a book that is true but for them.
#pragma once

#include "engine/drawing/document.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <vector>

namespace model {

// A page for each of these marks, in Resolved::marks, as the book has it; small pieces that share
// its page are there too. No pages where no mark is given. `has_errors`: the project is not fit to
// cut from, which each page then says.
engine::Document changed_pages(const Project& project,
                               const Catalogue& catalogue,
                               const Resolved& resolved,
                               const std::vector<Index>& marks,
                               engine::Paper paper,
                               bool has_errors = false);

}  // namespace model

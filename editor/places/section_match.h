// Which sections of the catalogue a typed text means, the likeliest first.
#pragma once

#include "model/catalogue/catalogue.h"

#include <string_view>
#include <vector>

namespace editor {

// All in the catalogue's order while nothing is typed. Else those that hold all words of it: first
// the one that was typed in full, then those whose name or size begins with the text, then those
// that hold its words whole and in order ("1 x 1" is not in "1/2 x 1/2"), then the others.
std::vector<const model::Section*> matching_sections(const model::Catalogue& catalogue,
                                                     std::string_view typed);

}  // namespace editor

// A piece in a maker's words.
#pragma once

#include "editor/derived.h"

#include <string>

namespace editor {

// "A1": its mark.
std::string mark_text(const Derived& derived, model::Index piece);

// "A1, opposite hand  post left back, 30": what the pointer is over.
std::string piece_words(const Derived& derived, model::Index piece);

// "post left back, part 2", "shim", "gusset at post left and rail top".
std::string member_words(const Derived& derived, model::Index piece);

std::string hand_words(model::Hand hand);

}  // namespace editor

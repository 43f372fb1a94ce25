// What is settled at a place and what is still open, in two or three words: they stand on its tab.
#pragma once

#include "editor/derived.h"
#include "editor/place.h"

#include <string>

namespace editor {

struct PlaceWords {
    std::string text;
    bool is_open = false;  // something is to be looked at
};

PlaceWords place_words(const Derived& derived, Place place);

}  // namespace editor

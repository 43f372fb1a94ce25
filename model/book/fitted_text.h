// Letters made smaller until their words fit.
#pragma once

#include "engine/drawing/lettering.h"

#include <algorithm>
#include <string_view>

namespace model {

// Not below `least`.
inline double size_to_fit(std::string_view words,
                          double size,
                          double width,
                          engine::LetterWeight weight = engine::LetterWeight::regular,
                          double least = 1.6) {
    const double is = engine::text_width(words, size, weight);
    return is <= width ? size : std::max(least, size * width / is);
}

}  // namespace model

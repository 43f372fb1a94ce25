// Texts broken into lines that fit, whatever they hold.
#pragma once

#include "engine/drawing/lettering.h"

#include <string>
#include <string_view>
#include <vector>

namespace model {

// At spaces where words need not be kept together; what is wider than a line at its other spaces, a
// word within itself. Never empty.
std::vector<std::string> wrapped_lines(std::string_view text,
                                       double size,
                                       double width,
                                       engine::LetterWeight weight = engine::LetterWeight::regular);

// The text, or as much of its beginning as fits, with an ellipsis.
std::string shortened(std::string_view text,
                      double size,
                      double width,
                      engine::LetterWeight weight = engine::LetterWeight::regular);

}  // namespace model

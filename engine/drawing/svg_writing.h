// Builds the text of an SVG file.
#pragma once

#include <string>
#include <string_view>

namespace engine {

// mm or degrees with at most four decimals, the same on every machine: "12.7", "0", "-3.1416".
std::string svg_number(double value);

// As the content of an element or of an attribute: what XML would take for itself is escaped.
std::string xml_text(std::string_view printable);

}  // namespace engine

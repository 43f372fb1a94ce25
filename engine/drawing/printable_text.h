// Texts that may hold anything, as they can be put on paper and into files.
#pragma once

#include <string>
#include <string_view>

namespace engine {

// Well-formed UTF-8 on one line: line breaks and tabs become spaces; bytes that are no UTF-8 and
// control characters, which neither a PDF nor an XML file may hold, become U+FFFD.
std::string printable_text(std::string_view text);

// The characters of a text that is printable.
std::u32string characters_of(std::string_view printable);

// Puts a character behind the text, as UTF-8.
void append_character(std::string& text, char32_t character);

}  // namespace engine

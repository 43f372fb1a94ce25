// The files of the fonts, carried inside the program: text looks the same in the window and on
// paper, on any machine and in tests.
#pragma once

#include <span>

namespace engine {

enum class FontFile { roboto_regular, roboto_medium, dejavu_sans };

// The bytes of the file, as the packages fonts-roboto-unhinted (Apache License 2.0) and
// fonts-dejavu-core (Bitstream Vera licence) hold them.
std::span<const unsigned char> bytes_of(FontFile file);

}  // namespace engine

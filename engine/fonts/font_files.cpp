#include "engine/fonts/font_files.h"

// Defined by embedded_fonts.S.
extern "C" {
extern const unsigned char barwright_roboto_regular[];
extern const unsigned char barwright_roboto_regular_end[];
extern const unsigned char barwright_roboto_medium[];
extern const unsigned char barwright_roboto_medium_end[];
extern const unsigned char barwright_dejavu_sans[];
extern const unsigned char barwright_dejavu_sans_end[];
}

namespace engine {

std::span<const unsigned char> bytes_of(FontFile file) {
    switch (file) {
        case FontFile::roboto_regular:
            return {barwright_roboto_regular, barwright_roboto_regular_end};
        case FontFile::roboto_medium:
            return {barwright_roboto_medium, barwright_roboto_medium_end};
        case FontFile::dejavu_sans:
            break;
    }
    return {barwright_dejavu_sans, barwright_dejavu_sans_end};
}

}  // namespace engine

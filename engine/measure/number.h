// Numbers as a tape shows them, without their unit: `18`, `466.7`, `3/8`, `18 3/8`, `18-3/8`.
#pragma once

#include "engine/measure/fraction.h"
#include "engine/measure/text_scan.h"

#include <cstddef>
#include <optional>

namespace engine {

// How a number may be read where it stands.
struct NumberPlace {
    bool fraction = true;    // `3/8` is one number; not so right after a division sign
    bool dash_joins = true;  // `18-3/8` is one number; not so inside a product
};

// A fraction of one character, such as U+00BD for 1/2. No value: any other character.
std::optional<Fraction> fraction_of_character(char32_t c);

inline bool starts_literal(char32_t c) {
    return is_digit(c) || c == U'.' || (c >= 0x80 && fraction_of_character(c).has_value());
}

// Takes a number from its first character. Errors: invalid_text, invalid_value for a fraction over
// nothing, out_of_range. Sets `is_joined_by_dash` where a dash joined its parts.
std::optional<Fraction> take_number(TextScan& scan, NumberPlace place, bool& is_joined_by_dash);

std::nullopt_t fail_too_large(TextScan& scan, std::size_t begin);

}  // namespace engine

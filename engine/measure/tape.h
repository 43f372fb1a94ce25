// Reading and printing lengths the way a tape measure shows them.
#pragma once

#include "engine/measure/length.h"
#include "engine/result.h"

#include <string>
#include <string_view>

namespace engine {

enum class LengthUnit { inch, foot, millimetre, centimetre, metre };

enum class TapeForm { inch_fraction, feet_inches, inch_decimal, millimetre, centimetre, metre };

// How lengths are shown.
struct TapeStyle {
    TapeForm form = TapeForm::inch_fraction;
    int denominator = 32;    // of inch fractions: 1, 2, 4 .. 64; others count as the next coarser
    int decimals = 3;        // of decimal forms, 0 .. 7: fewer are printed where the rest is zero
    bool with_unit = false;  // "18 3/8 in" instead of "18 3/8"

    bool operator==(const TapeStyle&) const = default;
};

// One mark of the tape in that style: 1/denominator in, or the last decimal (to the nanometre, and
// never less than one).
Length tape_step(const TapeStyle& style);

// The unit in which a bare number is meant in that style.
LengthUnit bare_unit(const TapeStyle& style);

// Whether a length lies on a mark, exactly.
bool is_on_mark(Length length, const TapeStyle& style);

// Rounded to the nearest mark, halves away from zero: "18 3/8", "1' 6 3/8\"", "466.7". What is
// printed can be read again, and printing that gives the same text.
std::string tape_text(Length length, const TapeStyle& style);

// Never rounded, always readable again: in the style where the length lies on a 1/64 in or on the
// style's decimals, otherwise as millimetres with a unit.
// read_length(exact_text(x, style), bare_unit(style)) == x for all x.
std::string exact_text(Length length, const TapeStyle& style);

// Reads `18 3/8`, `18-3/8"`, `1' 6 3/8"`, `466.7 mm`, `46.67 cm`, `18 in`, `1 ft 6 in`, with
// unicode fractions and prime marks too, and one sign in front. The dash of a mixed number stands
// tight on both sides; its fraction is less than one. Units: in inch inches " ft foot feet ' mm cm
// m; a number without one is in `bare`, behind feet in inches. The value is exact, or rounded to
// the nanometre where the text asks for less than one, halves away from zero. Error: invalid_text
// with the column (from 1, in characters) at which reading failed in `where` ("column 5"), or
// out_of_range.
Result<Length> read_length(std::string_view text, LengthUnit bare);

}  // namespace engine

// Numbers as a tape shows them, with or without a unit: `18 3/8`, `18-3/8"`, `1' 6"`, `45 deg`.
#pragma once

#include "engine/measure/formula.h"
#include "engine/measure/fraction.h"
#include "engine/measure/number.h"
#include "engine/measure/text_scan.h"

#include <optional>
#include <string_view>

namespace engine {

struct Literal {
    QuantityKind kind = QuantityKind::number;
    Fraction value;  // nanometres, degrees, or plain
    bool is_joined_by_dash = false;
};

// Reads from the first character of a literal and leaves the spaces behind it. Errors:
// invalid_text, invalid_value for a fraction over nothing, out_of_range.
std::optional<Literal> read_literal(TextScan& scan, NumberPlace place);

// A plain number as a length in that unit. No value: out of range.
std::optional<Fraction> in_nanometres(const Fraction& number, LengthUnit unit);

// Whether a word is the name of a unit: "in", "ft", "deg".
bool is_unit_word(std::string_view word);

// The nearest nanometre, halves away from zero. No value: out of range.
std::optional<Length> nearest_length(const Fraction& nanometres);

}  // namespace engine

// Exact fractions inside the reading of lengths and formulas: what was typed stays whole until it
// is rounded once, at the end.
#pragma once

#include <cstdint>
#include <optional>

namespace engine {

__extension__ typedef __int128 WideInteger;

// numerator / denominator with denominator > 0; in lowest terms only where that was needed to keep
// the parts short. Arithmetic gives no value where the exact result does not fit.
struct Fraction {
    WideInteger numerator = 0;
    WideInteger denominator = 1;
};

std::optional<Fraction> sum(const Fraction& a, const Fraction& b);
std::optional<Fraction> product(const Fraction& a, const Fraction& b);
// No value where b is zero, too.
std::optional<Fraction> quotient(const Fraction& a, const Fraction& b);

constexpr Fraction negated(const Fraction& a) { return {-a.numerator, a.denominator}; }
inline std::optional<Fraction> difference(const Fraction& a, const Fraction& b) {
    return sum(a, negated(b));
}

// Less than, equal to or more than zero, as a is to b.
std::optional<int> comparison(const Fraction& a, const Fraction& b);

enum class Rounding { nearest, down, up };  // nearest: halves away from zero

WideInteger whole_number(const Fraction& a, Rounding rounding);

// The nearest double, ties to even.
double nearest_double(const Fraction& a);

// The simplest fraction whose nearest double this is, so that a third which passed through a double
// is a third again. No value for what is no finite number, or beyond the range of Fraction.
std::optional<Fraction> simplest_fraction(double value);

}  // namespace engine

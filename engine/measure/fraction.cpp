#include "engine/measure/fraction.h"

#include <cmath>
#include <cstdlib>
#include <limits>
#include <utility>

namespace engine {
namespace {

// Parts stay within `most`, so that the sum of two cannot overflow. Short parts need no check at
// all: not even the sum of two of their products leaves that range.
constexpr WideInteger most = (static_cast<WideInteger>(1) << 126) - 1;
constexpr WideInteger short_end = static_cast<WideInteger>(1) << 62;

constexpr bool is_short(WideInteger v) { return -short_end < v && v < short_end; }
constexpr bool is_short(const Fraction& a) {
    return is_short(a.numerator) && is_short(a.denominator);
}
constexpr WideInteger magnitude(WideInteger v) { return v < 0 ? -v : v; }

WideInteger common_divisor(WideInteger a, WideInteger b) {
    a = magnitude(a);
    b = magnitude(b);
    while (b != 0) {
        if (is_short(a) && is_short(b)) {
            auto x = static_cast<std::uint64_t>(a);
            auto y = static_cast<std::uint64_t>(b);
            while (y != 0) x = std::exchange(y, x % y);
            return static_cast<WideInteger>(x);
        }
        a = std::exchange(b, a % b);
    }
    return a;
}

Fraction lowest_terms(const Fraction& a) {
    const auto divisor = common_divisor(a.numerator, a.denominator);
    if (divisor <= 1) return a;
    return {a.numerator / divisor, a.denominator / divisor};
}

Fraction kept_short(const Fraction& a) { return is_short(a) ? a : lowest_terms(a); }

std::optional<WideInteger> checked_product(WideInteger a, WideInteger b) {
    if (is_short(a) && is_short(b)) return a * b;
    if (b != 0 && magnitude(a) > most / magnitude(b)) return std::nullopt;
    return a * b;
}

std::optional<WideInteger> checked_sum(WideInteger a, WideInteger b) {
    const auto total = a + b;  // each within `most`, so that this fits
    if (magnitude(total) > most) return std::nullopt;
    return total;
}

std::optional<Fraction> long_sum(const Fraction& a, const Fraction& b) {
    const auto shared = common_divisor(a.denominator, b.denominator);
    const auto left = checked_product(a.numerator, b.denominator / shared);
    const auto right = checked_product(b.numerator, a.denominator / shared);
    const auto denominator = checked_product(a.denominator / shared, b.denominator);
    if (!left || !right || !denominator) return std::nullopt;
    const auto numerator = checked_sum(*left, *right);
    if (!numerator) return std::nullopt;
    return kept_short({*numerator, *denominator});
}

std::optional<Fraction> long_product(const Fraction& a, const Fraction& b) {
    const auto first = lowest_terms({a.numerator, b.denominator});
    const auto second = lowest_terms({b.numerator, a.denominator});
    const auto numerator = checked_product(first.numerator, second.numerator);
    const auto denominator = checked_product(first.denominator, second.denominator);
    if (!numerator || !denominator) return std::nullopt;
    return Fraction{*numerator, *denominator};
}

constexpr bool is_exact_in_double(WideInteger v) {
    return magnitude(v) <= (static_cast<WideInteger>(1) << std::numeric_limits<double>::digits);
}

// Long division to 55 significant bits, the last of which says whether anything is left over:
// enough for one correct rounding.
double divided_bit_by_bit(WideInteger n, WideInteger d) {
    constexpr WideInteger enough = static_cast<WideInteger>(1) << 54;
    auto bits = n / d;
    auto rest = n % d;
    int exponent = 0;
    while (bits < enough && (bits != 0 || rest != 0)) {
        rest *= 2;
        bits = bits * 2 + (rest >= d ? 1 : 0);
        if (rest >= d) rest -= d;
        --exponent;
    }
    if (rest != 0) bits |= 1;
    return std::ldexp(static_cast<double>(bits), exponent);
}

std::optional<Fraction> exact_fraction(double value) {
    if (!std::isfinite(value)) return std::nullopt;
    int exponent = 0;
    const double scaled = std::frexp(value, &exponent);
    const auto digits = static_cast<std::int64_t>(std::ldexp(scaled, 53));
    exponent -= 53;
    if (digits == 0) return Fraction{};
    if (exponent > 72 || exponent < -125) return std::nullopt;
    const auto power = static_cast<WideInteger>(1) << std::abs(exponent);
    if (exponent >= 0) return Fraction{digits * power, 1};
    return lowest_terms({digits, power});
}

}  // namespace

std::optional<Fraction> sum(const Fraction& a, const Fraction& b) {
    if (!is_short(a) || !is_short(b)) return long_sum(a, b);
    if (a.denominator == b.denominator)
        return kept_short({a.numerator + b.numerator, a.denominator});
    const auto numerator = a.numerator * b.denominator + b.numerator * a.denominator;
    return kept_short({numerator, a.denominator * b.denominator});
}

std::optional<Fraction> product(const Fraction& a, const Fraction& b) {
    if (!is_short(a) || !is_short(b)) return long_product(a, b);
    return kept_short({a.numerator * b.numerator, a.denominator * b.denominator});
}

std::optional<Fraction> quotient(const Fraction& a, const Fraction& b) {
    if (b.numerator == 0) return std::nullopt;
    if (b.numerator < 0) return product(a, {-b.denominator, -b.numerator});
    return product(a, {b.denominator, b.numerator});
}

std::optional<int> comparison(const Fraction& a, const Fraction& b) {
    const auto gap = difference(a, b);
    if (!gap) return std::nullopt;
    return (gap->numerator > 0 ? 1 : 0) - (gap->numerator < 0 ? 1 : 0);
}

WideInteger whole_number(const Fraction& a, Rounding rounding) {
    if (a.denominator == 1) return a.numerator;
    const auto whole = a.numerator / a.denominator;
    const auto rest = a.numerator % a.denominator;
    switch (rounding) {
        case Rounding::down:
            return whole - (rest < 0 ? 1 : 0);
        case Rounding::up:
            return whole + (rest > 0 ? 1 : 0);
        case Rounding::nearest:
            break;
    }
    if (magnitude(rest) < a.denominator - magnitude(rest)) return whole;
    return whole + (rest < 0 ? -1 : 1);
}

double nearest_double(const Fraction& a) {
    const auto least = lowest_terms(a);
    if (is_exact_in_double(least.numerator) && is_exact_in_double(least.denominator))
        return static_cast<double>(least.numerator) / static_cast<double>(least.denominator);
    const auto size = divided_bit_by_bit(magnitude(least.numerator), least.denominator);
    return least.numerator < 0 ? -size : size;
}

std::optional<Fraction> simplest_fraction(double value) {
    const auto exact = exact_fraction(value);
    if (!exact || exact->denominator == 1) return exact;
    auto n = magnitude(exact->numerator);
    auto d = exact->denominator;
    // The convergents of the continued fraction: p/q after the term, p_last/q_last before it.
    WideInteger p = 1, p_last = 0, q = 0, q_last = 1;
    while (d != 0) {
        const auto term = n / d;
        p_last = std::exchange(p, term * p + p_last);
        q_last = std::exchange(q, term * q + q_last);
        if (!is_exact_in_double(p) || !is_exact_in_double(q)) break;
        if (static_cast<double>(p) / static_cast<double>(q) == std::abs(value))
            return Fraction{value < 0 ? -p : p, q};
        n = std::exchange(d, n - term * d);
    }
    return exact;
}

}  // namespace engine

#include "engine/measure/number.h"

#include <array>

namespace engine {
namespace {

struct Digits {
    WideInteger value = 0;
    bool is_too_large = false;
    std::size_t count = 0;
};

Digits take_digits(TextScan& scan) {
    constexpr WideInteger most = 1'000'000'000'000'000'000;  // with room for the decimals
    Digits digits;
    for (char32_t c = scan.next(); is_digit(c); c = scan.next()) {
        if (digits.value >= most) digits.is_too_large = true;
        if (!digits.is_too_large)
            digits.value = digits.value * 10 + static_cast<WideInteger>(c - U'0');
        ++digits.count;
        scan.step();
    }
    return digits;
}

// Decimals behind a point. Those beyond the eighteenth are dropped: in any unit they are less than
// a billionth of a nanometre.
Fraction take_decimals(TextScan& scan) {
    constexpr int most = 18;
    Fraction decimals;
    WideInteger zeros = 1;  // power of ten of the zeros that count only if something follows them
    int count = 0;
    for (char32_t c = scan.next(); is_digit(c); c = scan.next(), ++count) {
        scan.step();
        if (count >= most) continue;
        zeros *= 10;
        if (c == U'0') continue;
        decimals.numerator = decimals.numerator * zeros + static_cast<WideInteger>(c - U'0');
        decimals.denominator *= zeros;
        zeros = 1;
    }
    return decimals;
}

// The rest of `3/8` behind the 3, if there is one: otherwise no value and nothing taken.
std::optional<Fraction> take_over(TextScan& scan, std::size_t begin, const Digits& numerator) {
    const auto slash = scan.at();
    if (!is_slash(scan.next())) return std::nullopt;
    scan.step();
    const auto denominator_at = scan.at();
    const auto denominator = take_digits(scan);
    if (denominator.count == 0 || scan.next() == U'.') {
        scan.go_to(slash);
        return std::nullopt;
    }
    if (numerator.is_too_large || denominator.is_too_large) return fail_too_large(scan, begin);
    if (denominator.value == 0) {
        return scan.fail(ErrorCode::invalid_value, denominator_at,
                         scan.passed_since(begin) + " divides by zero");
    }
    return Fraction{numerator.value, denominator.value};
}

// `3/8` or a one-character fraction, if it stands here.
std::optional<Fraction> take_fraction(TextScan& scan) {
    const auto begin = scan.at();
    if (const auto single = fraction_of_character(scan.next())) {
        scan.step();
        return single;
    }
    const auto numerator = take_digits(scan);
    if (numerator.count == 0) return std::nullopt;
    const auto fraction = take_over(scan, begin, numerator);
    if (!fraction) scan.go_to(begin);
    return fraction;
}

// The fraction that makes a whole number a mixed one, zero where there is none.
std::optional<Fraction> take_rest_of_mixed(TextScan& scan,
                                           std::size_t begin,
                                           NumberPlace place,
                                           bool& is_joined_by_dash) {
    const auto behind_whole = scan.at();
    const bool has_dash = is_dash(scan.next());
    if (has_dash && place.dash_joins) {
        scan.step();
    } else {
        scan.skip_spaces();
    }
    const auto fraction = take_fraction(scan);
    if (scan.has_failed()) return std::nullopt;
    if (!fraction) {
        scan.go_to(behind_whole);
        return Fraction{};
    }
    if (fraction->numerator >= fraction->denominator) {
        return scan.fail(ErrorCode::invalid_text, begin,
                         scan.passed_since(begin) +
                             " is no mixed number, as its fraction is not less than one; put "
                             "spaces on both sides of a minus");
    }
    is_joined_by_dash = has_dash;
    return fraction;
}

}  // namespace

// One-character fractions of the Unicode Standard, Latin-1 and Number Forms (code points from
// memory).
std::optional<Fraction> fraction_of_character(char32_t c) {
    struct Row {
        char32_t code;
        int numerator;
        int denominator;
    };
    static constexpr std::array rows{
        Row{0xBC, 1, 4},   Row{0xBD, 1, 2},    Row{0xBE, 3, 4},   Row{0x2150, 1, 7},
        Row{0x2151, 1, 9}, Row{0x2152, 1, 10}, Row{0x2153, 1, 3}, Row{0x2154, 2, 3},
        Row{0x2155, 1, 5}, Row{0x2156, 2, 5},  Row{0x2157, 3, 5}, Row{0x2158, 4, 5},
        Row{0x2159, 1, 6}, Row{0x215A, 5, 6},  Row{0x215B, 1, 8}, Row{0x215C, 3, 8},
        Row{0x215D, 5, 8}, Row{0x215E, 7, 8},
    };
    if (c < 0x80) return std::nullopt;
    for (const auto& row : rows) {
        if (row.code == c) return Fraction{row.numerator, row.denominator};
    }
    return std::nullopt;
}

std::optional<Fraction> take_number(TextScan& scan, NumberPlace place, bool& is_joined_by_dash) {
    const auto begin = scan.at();
    if (const auto single = fraction_of_character(scan.next())) {
        scan.step();
        return single;
    }
    const auto whole = take_digits(scan);
    std::optional<Fraction> rest;
    if (scan.take(U'.')) {
        if (whole.count == 0 && !is_digit(scan.next())) {
            return scan.fail(ErrorCode::invalid_text, begin, "a point alone is no number");
        }
        rest = take_decimals(scan);
    } else {
        const auto fraction = place.fraction ? take_over(scan, begin, whole) : std::nullopt;
        if (fraction || scan.has_failed()) return fraction;
        rest = take_rest_of_mixed(scan, begin, place, is_joined_by_dash);
        if (!rest) return std::nullopt;
    }
    const auto number = sum({whole.value, 1}, *rest);
    if (whole.is_too_large || !number) return fail_too_large(scan, begin);
    return number;
}

std::nullopt_t fail_too_large(TextScan& scan, std::size_t begin) {
    return scan.fail(ErrorCode::out_of_range, begin,
                     scan.passed_since(begin) + " is too large to work with");
}

}  // namespace engine

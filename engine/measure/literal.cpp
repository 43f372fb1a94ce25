#include "engine/measure/literal.h"

#include <array>
#include <cstdint>
#include <limits>

namespace engine {
namespace {

struct Unit {
    QuantityKind kind = QuantityKind::number;
    std::int64_t size = 1;  // in nanometres or degrees

    bool operator==(const Unit&) const = default;
};

constexpr Unit inch{QuantityKind::length, Length::nm_per_inch};
constexpr Unit foot{QuantityKind::length, 12 * Length::nm_per_inch};
constexpr Unit millimetre{QuantityKind::length, Length::nm_per_mm};
constexpr Unit centimetre{QuantityKind::length, 10 * Length::nm_per_mm};
constexpr Unit metre{QuantityKind::length, 1000 * Length::nm_per_mm};
constexpr Unit degree{QuantityKind::angle, 1};

struct UnitWord {
    std::string_view word;
    Unit unit;
};

constexpr std::array unit_words{
    UnitWord{"in", inch},       UnitWord{"mm", millimetre}, UnitWord{"ft", foot},
    UnitWord{"cm", centimetre}, UnitWord{"m", metre},       UnitWord{"deg", degree},
    UnitWord{"inch", inch},     UnitWord{"inches", inch},   UnitWord{"foot", foot},
    UnitWord{"feet", foot},     UnitWord{"degree", degree}, UnitWord{"degrees", degree},
};

constexpr char32_t degree_sign = 0xB0;

const Unit* unit_called(std::string_view word) {
    for (const auto& known : unit_words) {
        if (known.word == word) return &known.unit;
    }
    return nullptr;
}

constexpr bool is_foot_mark(char32_t c) { return c == U'\'' || c == 0x2032 || c == 0x2019; }
constexpr bool is_inch_mark(char32_t c) { return c == U'"' || c == 0x2033 || c == 0x201D; }

struct Digits {
    WideInteger value = 0;
    bool is_too_large = false;
    std::size_t count = 0;
};

Digits take_digits(TextScan& scan) {
    constexpr WideInteger most = 1'000'000'000'000'000'000;  // and room for 19 decimals
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

// Decimals behind a point. Of more than 18 only whether any is not zero is kept, as a nineteenth:
// that cannot change to which nanometre a length is rounded.
Fraction take_decimals(TextScan& scan) {
    constexpr int most = 18;
    Fraction decimals;
    WideInteger zeros = 1;  // power of ten of the zeros that count only if something follows them
    int count = 0;
    bool has_more = false;
    for (char32_t c = scan.next(); is_digit(c); c = scan.next(), ++count) {
        scan.step();
        if (count >= most) {
            has_more = has_more || c != U'0';
            continue;
        }
        zeros *= 10;
        if (c == U'0') continue;
        decimals.numerator = decimals.numerator * zeros + static_cast<WideInteger>(c - U'0');
        decimals.denominator *= zeros;
        zeros = 1;
    }
    if (has_more) {
        decimals.numerator = decimals.numerator * zeros * 10 + 1;
        decimals.denominator *= zeros * 10;
    }
    return decimals;
}

std::nullopt_t fail_too_large(TextScan& scan, std::size_t begin) {
    return scan.fail(ErrorCode::out_of_range, begin,
                     scan.passed_since(begin) + " is too large to work with");
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
                                           LiteralPlace place,
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

// A number without its unit.
std::optional<Fraction> take_number(TextScan& scan, LiteralPlace place, bool& is_joined_by_dash) {
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

std::string_view take_letters(TextScan& scan) {
    const auto begin = scan.at();
    while (is_letter(scan.next())) scan.step();
    return scan.text().substr(begin, scan.at() - begin);
}

// A mark such as `"` or ``''``; plain where there is none.
Unit take_unit_mark(TextScan& scan) {
    const auto mark = scan.next();
    if (is_inch_mark(mark)) {
        scan.step();
        return inch;
    }
    if (mark == degree_sign) {
        scan.step();
        return degree;
    }
    if (!is_foot_mark(mark)) return {};
    scan.step();
    if (!is_foot_mark(scan.next())) return foot;
    scan.step();
    return inch;
}

// The unit behind a number, spaces before it or not; plain where there is none.
std::optional<Unit> take_unit(TextScan& scan) {
    const auto behind_number = scan.at();
    scan.skip_spaces();
    const auto begin = scan.at();
    if (is_letter(scan.next())) {
        const auto word = take_letters(scan);
        if (const auto* unit = unit_called(word)) return *unit;
        return scan.fail(ErrorCode::invalid_text, begin,
                         quoted(word) +
                             " is not a unit: write in, ft, mm, cm, m or deg, or * "
                             "before what is to be multiplied");
    }
    const auto unit = take_unit_mark(scan);
    if (unit == Unit{}) scan.go_to(behind_number);
    return unit;
}

std::optional<Fraction> times(const Fraction& number, std::int64_t size) {
    return product(number, {size, 1});
}

// The inches behind feet, in nanometres; zero where there are none.
std::optional<Fraction> take_inches(TextScan& scan, LiteralPlace place, bool& is_joined_by_dash) {
    const auto behind_feet = scan.at();
    const bool has_dash = is_dash(scan.next()) && place.dash_joins;
    if (has_dash) {
        scan.step();
    } else {
        scan.skip_spaces();
    }
    if (!starts_literal(scan.next())) {
        scan.go_to(behind_feet);
        return Fraction{};
    }
    is_joined_by_dash = is_joined_by_dash || has_dash;
    const auto number = take_number(scan, {true, place.dash_joins}, is_joined_by_dash);
    if (!number) return std::nullopt;
    const auto behind_number = scan.at();
    const auto unit = take_unit(scan);
    if (!unit) return std::nullopt;
    if (*unit != inch && *unit != Unit{}) {
        scan.go_to(behind_number);
        scan.skip_spaces();
        return scan.fail(ErrorCode::invalid_text, scan.at(), "only inches can follow feet");
    }
    return times(*number, inch.size);
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

std::optional<Literal> read_literal(TextScan& scan, LiteralPlace place) {
    const auto begin = scan.at();
    Literal literal;
    const auto number = take_number(scan, place, literal.is_joined_by_dash);
    if (!number) return std::nullopt;
    const auto unit = take_unit(scan);
    if (!unit) return std::nullopt;
    literal.kind = unit->kind;
    auto value = times(*number, unit->size);
    if (value && *unit == foot) {
        const auto inches = take_inches(scan, place, literal.is_joined_by_dash);
        if (scan.has_failed()) return std::nullopt;
        value = inches ? sum(*value, *inches) : std::nullopt;
    }
    if (!value) return fail_too_large(scan, begin);
    literal.value = *value;
    return literal;
}

std::optional<Fraction> in_nanometres(const Fraction& number, LengthUnit unit) {
    switch (unit) {
        case LengthUnit::inch:
            return times(number, inch.size);
        case LengthUnit::foot:
            return times(number, foot.size);
        case LengthUnit::millimetre:
            return times(number, millimetre.size);
        case LengthUnit::centimetre:
            return times(number, centimetre.size);
        case LengthUnit::metre:
            return times(number, metre.size);
    }
    return std::nullopt;
}

bool is_unit_word(std::string_view word) { return unit_called(word) != nullptr; }

std::optional<Length> nearest_length(const Fraction& nanometres) {
    const auto whole = whole_number(nanometres, Rounding::nearest);
    if (whole < std::numeric_limits<std::int64_t>::min() ||
        whole > std::numeric_limits<std::int64_t>::max()) {
        return std::nullopt;
    }
    return Length::from_nm(static_cast<std::int64_t>(whole));
}

}  // namespace engine

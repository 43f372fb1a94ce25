#include "engine/measure/tape.h"

#include "engine/measure/fraction.h"
#include "engine/measure/literal.h"
#include "engine/measure/text_scan.h"

#include <algorithm>
#include <array>
#include <bit>
#include <limits>

namespace engine {
namespace {

constexpr std::int64_t nm_per_foot = 12 * Length::nm_per_inch;
constexpr int finest_denominator = 64;

bool is_decimal(TapeForm form) {
    return form != TapeForm::inch_fraction && form != TapeForm::feet_inches;
}

// A style from a file may ask for what no tape has: the next coarser mark serves.
int denominator_of(const TapeStyle& style) {
    const auto asked = static_cast<unsigned>(std::clamp(style.denominator, 1, finest_denominator));
    return static_cast<int>(std::bit_floor(asked));
}

std::int64_t nm_per_unit(TapeForm form) {
    switch (form) {
        case TapeForm::inch_fraction:
        case TapeForm::feet_inches:
        case TapeForm::inch_decimal:
            return Length::nm_per_inch;
        case TapeForm::millimetre:
            return Length::nm_per_mm;
        case TapeForm::centimetre:
            return 10 * Length::nm_per_mm;
        case TapeForm::metre:
            return 1000 * Length::nm_per_mm;
    }
    return Length::nm_per_inch;
}

std::string_view unit_suffix(TapeForm form) {
    switch (form) {
        case TapeForm::inch_fraction:
        case TapeForm::inch_decimal:
            return " in";
        case TapeForm::feet_inches:
            return "";  // has its marks already
        case TapeForm::millimetre:
            return " mm";
        case TapeForm::centimetre:
            return " cm";
        case TapeForm::metre:
            return " m";
    }
    return "";
}

// Marks in one unit of the form: the denominator, or a power of ten.
std::int64_t marks_per_unit(const TapeStyle& style) {
    if (!is_decimal(style.form)) return denominator_of(style);
    constexpr std::array<std::int64_t, 8> powers{1,      10,      100,       1'000,
                                                 10'000, 100'000, 1'000'000, 10'000'000};
    return powers[static_cast<std::size_t>(std::clamp(style.decimals, 0, 7))];
}

// A length as marks of the tape: without its sign, as whole units and marks beyond them.
struct Marks {
    bool is_negative = false;
    std::int64_t units = 0;
    std::int64_t rest = 0;  // of per_unit
    std::int64_t per_unit = 1;
};

constexpr auto most_length = Length::from_nm(std::numeric_limits<std::int64_t>::max());
constexpr auto least_length = Length::from_nm(std::numeric_limits<std::int64_t>::min());

WideInteger magnitude(Length length) {
    const WideInteger nm = length.nm();
    return nm < 0 ? -nm : nm;
}

Marks marks_of(Length length, const TapeStyle& style) {
    const WideInteger unit = nm_per_unit(style.form);
    const WideInteger per_unit = marks_per_unit(style);
    auto count = whole_number({magnitude(length) * per_unit, unit}, Rounding::nearest);
    // The last mark within the range of lengths, so that what is printed can be read again.
    const WideInteger most = magnitude(length.nm() < 0 ? least_length : most_length);
    if (whole_number({count * unit, per_unit}, Rounding::nearest) > most) {
        count = most * per_unit / unit;
    }
    return {length.nm() < 0 && count != 0, static_cast<std::int64_t>(count / per_unit),
            static_cast<std::int64_t>(count % per_unit), static_cast<std::int64_t>(per_unit)};
}

// "18 3/8", "18", "3/8" or "0".
std::string mixed_number(std::int64_t whole, std::int64_t numerator, std::int64_t denominator) {
    if (numerator == 0) return std::to_string(whole);
    while (numerator % 2 == 0) {
        numerator /= 2;
        denominator /= 2;
    }
    const auto fraction = std::to_string(numerator) + "/" + std::to_string(denominator);
    return whole == 0 ? fraction : std::to_string(whole) + " " + fraction;
}

std::string feet_text(const Marks& marks) {
    constexpr std::int64_t inches_per_foot = nm_per_foot / Length::nm_per_inch;
    const auto inches =
        mixed_number(marks.units % inches_per_foot, marks.rest, marks.per_unit) + "\"";
    const auto feet = marks.units / inches_per_foot;
    return feet == 0 ? inches : std::to_string(feet) + "' " + inches;
}

std::string decimal_text(const Marks& marks) {
    auto text = std::to_string(marks.units);
    if (marks.rest == 0) return text;
    auto decimals = std::to_string(marks.per_unit + marks.rest);  // a 1 stands for the point
    decimals.front() = '.';
    decimals.erase(decimals.find_last_not_of('0') + 1);
    return text + decimals;
}

std::string marks_text(const Marks& marks, TapeForm form) {
    if (is_decimal(form)) return decimal_text(marks);
    if (form == TapeForm::feet_inches) return feet_text(marks);
    return mixed_number(marks.units, marks.rest, marks.per_unit);
}

// The style with the marks that an exact text may use.
TapeStyle with_finest_marks(TapeStyle style) {
    style.denominator = finest_denominator;
    if (style.form == TapeForm::inch_decimal && style.decimals < 6) style.decimals = 6;
    return style;
}

bool take_sign(TextScan& scan) {
    const bool is_negative = is_dash(scan.next());
    if (is_negative || scan.next() == U'+') scan.step();
    scan.skip_spaces();
    return is_negative;
}

// The whole text as a length; no value where the scan holds an error.
std::optional<Length> take_length(TextScan& scan, LengthUnit bare) {
    scan.skip_spaces();
    const auto begin = scan.at();
    const bool is_negative = take_sign(scan);
    if (!starts_literal(scan.next())) {
        return scan.fail(ErrorCode::invalid_text, scan.at(),
                         "a length is needed, such as 18 3/8 in or 466.7 mm");
    }
    const auto literal = read_literal(scan, {});
    if (!literal) return std::nullopt;
    scan.skip_spaces();
    if (!scan.is_at_end())
        return scan.fail(ErrorCode::invalid_text, scan.at(), "the length ends before this");
    if (literal->kind == QuantityKind::angle)
        return scan.fail(ErrorCode::invalid_text, begin, "a length is needed, not an angle");
    const bool is_bare = literal->kind == QuantityKind::number;
    const auto nm = is_bare ? in_nanometres(literal->value, bare) : literal->value;
    const auto length = nm ? nearest_length(is_negative ? negated(*nm) : *nm) : std::nullopt;
    if (!length) return scan.fail(ErrorCode::out_of_range, begin, "the length is too large");
    return length;
}

}  // namespace

Length tape_step(const TapeStyle& style) {
    const Fraction step{nm_per_unit(style.form), marks_per_unit(style)};
    const auto nm = whole_number(step, Rounding::nearest);
    return Length::from_nm(std::max<std::int64_t>(1, static_cast<std::int64_t>(nm)));
}

LengthUnit bare_unit(const TapeStyle& style) {
    switch (style.form) {
        case TapeForm::inch_fraction:
        case TapeForm::feet_inches:
        case TapeForm::inch_decimal:
            return LengthUnit::inch;
        case TapeForm::millimetre:
            return LengthUnit::millimetre;
        case TapeForm::centimetre:
            return LengthUnit::centimetre;
        case TapeForm::metre:
            return LengthUnit::metre;
    }
    return LengthUnit::inch;
}

bool is_on_mark(Length length, const TapeStyle& style) {
    return magnitude(length) * marks_per_unit(style) % nm_per_unit(style.form) == 0;
}

std::string tape_text(Length length, const TapeStyle& style) {
    const auto marks = marks_of(length, style);
    auto text = marks_text(marks, style.form);
    if (marks.is_negative) text.insert(text.begin(), '-');
    if (style.with_unit) text += unit_suffix(style.form);
    return text;
}

std::string exact_text(Length length, const TapeStyle& style) {
    const bool is_on_fraction = length.nm() % (Length::nm_per_inch / finest_denominator) == 0;
    const bool is_in_inches = nm_per_unit(style.form) == Length::nm_per_inch;
    if (is_decimal(style.form) && is_on_mark(length, style)) return tape_text(length, style);
    if (is_in_inches && is_on_fraction) return tape_text(length, with_finest_marks(style));
    return tape_text(length, {.form = TapeForm::millimetre, .decimals = 6, .with_unit = true});
}

Result<Length> read_length(std::string_view text, LengthUnit bare) {
    TextScan scan{text};
    const auto length = take_length(scan, bare);
    if (length) return *length;
    auto error = scan.error();
    if (error.code == ErrorCode::invalid_value) error.code = ErrorCode::invalid_text;
    return error;
}

}  // namespace engine

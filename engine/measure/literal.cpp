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
std::optional<Fraction> take_inches(TextScan& scan, NumberPlace place, bool& is_joined_by_dash) {
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

std::optional<Literal> read_literal(TextScan& scan, NumberPlace place) {
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

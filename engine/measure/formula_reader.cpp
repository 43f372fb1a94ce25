#include "engine/measure/formula_reader.h"

#include "engine/measure/formula_names.h"

#include <string>

namespace engine {
namespace {

constexpr int deepest_nesting = 100;
constexpr char32_t times_sign = 0xD7;
constexpr char32_t divided_by_sign = 0xF7;

bool is_times(char32_t c) { return c == U'*' || c == times_sign; }
bool is_divided_by(char32_t c) { return is_slash(c) || c == divided_by_sign; }

std::string with_article(QuantityKind kind) {
    return (kind == QuantityKind::angle ? "an " : "a ") + std::string{name_of(kind)};
}

std::optional<Fraction> exact_value(const Quantity& quantity) {
    if (quantity.kind == QuantityKind::length) return Fraction{quantity.length.nm(), 1};
    return simplest_fraction(quantity.value);
}

}  // namespace

// ---- sums and products --------------------------------------------------------------------------

FormulaReader::MaybeTerm FormulaReader::whole() {
    const auto term = sum_of_products();
    if (!term) return std::nullopt;
    if (scan_.is_at_end()) return term;
    const auto c = scan_.next();
    if (c == U')') return scan_.fail(ErrorCode::invalid_text, scan_.at(), "this ) closes nothing");
    if (c == U'<' || c == U'>' || c == U'=' || c == U'!') {
        return scan_.fail(ErrorCode::invalid_text, scan_.at(),
                          "a comparison can only be the first part of if(...)");
    }
    return scan_.fail(ErrorCode::invalid_text, scan_.at(),
                      "+, -, * or / is needed here, or the end of the formula");
}

FormulaReader::MaybeTerm FormulaReader::sum_of_products() {
    auto total = product_of_signed();
    while (total && (is_dash(scan_.next()) || scan_.next() == U'+')) {
        const bool is_minus = is_dash(scan_.next());
        scan_.step();
        const auto next = product_of_signed();
        if (!next) return std::nullopt;
        total = added(*total, *next, is_minus);
    }
    return total;
}

FormulaReader::MaybeTerm FormulaReader::product_of_signed() {
    auto total = signed_primary({.fraction = true, .dash_joins = true});
    while (total && (is_times(scan_.next()) || is_divided_by(scan_.next()))) {
        if (total->is_joined_by_dash) {
            return scan_.fail(ErrorCode::invalid_text, total->begin,
                              text_of(*total) +
                                  " can be read in two ways here; write the mixed "
                                  "number with a space, or spaces on both sides of "
                                  "the minus");
        }
        const bool is_division = is_divided_by(scan_.next());
        scan_.step();
        const auto next = signed_primary({.fraction = !is_division, .dash_joins = false});
        if (!next) return std::nullopt;
        total = is_division ? divided(*total, *next) : multiplied(*total, *next);
    }
    return total;
}

FormulaReader::MaybeTerm FormulaReader::signed_primary(NumberPlace place) {
    scan_.skip_spaces();
    const auto begin = scan_.at();
    bool is_negative = false;
    while (is_dash(scan_.next()) || scan_.next() == U'+') {
        is_negative = is_negative != is_dash(scan_.next());
        scan_.step();
        scan_.skip_spaces();
    }
    auto term = primary(place);
    if (!term) return std::nullopt;
    if (is_negative) term->value = negated(term->value);
    term->begin = begin;
    term->end = scan_.at();
    scan_.skip_spaces();
    return term;
}

// ---- what sums and products are made of ---------------------------------------------------------

FormulaReader::MaybeTerm FormulaReader::primary(NumberPlace place) {
    const auto c = scan_.next();
    if (starts_literal(c)) return literal(place);
    if (is_letter(c)) return name_or_call();
    if (c == U'(') return in_parentheses();
    return scan_.fail(ErrorCode::invalid_text, scan_.at(),
                      "a number, a name or a part in parentheses is needed here");
}

FormulaReader::MaybeTerm FormulaReader::literal(NumberPlace place) {
    const auto read = read_literal(scan_, place);
    if (!read) return std::nullopt;
    Term term;
    term.kind = read->kind;
    term.value = read->value;
    term.is_bare = read->kind == QuantityKind::number;
    term.is_joined_by_dash = read->is_joined_by_dash;
    return term;
}

FormulaReader::MaybeTerm FormulaReader::in_parentheses() {
    const auto opened_at = scan_.at();
    if (!goes_deeper()) return std::nullopt;
    scan_.step();
    auto term = sum_of_products();
    if (!term) return std::nullopt;
    if (!scan_.take(U')'))
        return scan_.fail(ErrorCode::invalid_text, opened_at, "this ( is never closed");
    --depth_;
    term->is_bare = false;
    term->is_joined_by_dash = false;
    return term;
}

bool FormulaReader::goes_deeper() {
    if (++depth_ <= deepest_nesting) return true;
    static_cast<void>(
        scan_.fail(ErrorCode::invalid_text, scan_.at(),
                   "more than " + std::to_string(deepest_nesting) +
                       " parentheses inside one another; give a part of the formula a name"));
    return false;
}

FormulaReader::MaybeTerm FormulaReader::name_or_call() {
    const auto begin = scan_.at();
    const auto name = take_name(scan_);
    const auto behind_name = scan_.at();
    scan_.skip_spaces();
    if (scan_.next() == U'(') return call(name, begin);
    scan_.go_to(behind_name);
    return named_value(name, begin);
}

FormulaReader::MaybeTerm FormulaReader::named_value(std::string_view name, std::size_t begin) {
    if (is_unit_word(name)) {
        return scan_.fail(ErrorCode::invalid_text, begin,
                          quoted(name) + " is a unit; a number is needed before it");
    }
    const auto known = names_(name);
    switch (known.state) {
        case NameState::unknown:
            return scan_.fail(ErrorCode::unknown_name, begin,
                              "there is no value named " + quoted(name));
        case NameState::without_value:
            return scan_.fail(ErrorCode::invalid_value, begin,
                              quoted(name) + " has no value, as its own formula has an error");
        case NameState::known:
            break;
    }
    Term term;
    term.kind = known.quantity.kind;
    const auto value = exact_value(known.quantity);
    if (!value)
        return scan_.fail(ErrorCode::out_of_range, begin,
                          quoted(name) + " is too large or too small to work with");
    term.value = *value;
    return term;
}

// ---- arithmetic ---------------------------------------------------------------------------------

FormulaReader::MaybeTerm FormulaReader::added(const Term& a, const Term& b, bool is_minus) {
    if (!are_alike(a, b, is_minus ? "subtracted" : "added")) return std::nullopt;
    const auto other = is_minus ? negated(b.value) : b.value;
    return computed(a, b, a.kind, [&] { return sum(a.value, other); });
}

FormulaReader::MaybeTerm FormulaReader::multiplied(const Term& a, const Term& b) {
    if (a.kind != QuantityKind::number && b.kind != QuantityKind::number) {
        return scan_.fail(ErrorCode::invalid_value, b.begin,
                          with_article(a.kind) + ", " + text_of(a) + ", cannot be multiplied by " +
                              with_article(b.kind) + ", " + text_of(b));
    }
    const auto kind = a.kind == QuantityKind::number ? b.kind : a.kind;
    return computed(a, b, kind, [&] { return product(a.value, b.value); });
}

FormulaReader::MaybeTerm FormulaReader::divided(const Term& a, const Term& b) {
    if (b.kind != QuantityKind::number && a.kind != b.kind) {
        return scan_.fail(ErrorCode::invalid_value, b.begin,
                          with_article(a.kind) + ", " + text_of(a) + ", cannot be divided by " +
                              with_article(b.kind) + ", " + text_of(b));
    }
    if (b.value.numerator == 0 && !is_skipping_)
        return scan_.fail(ErrorCode::invalid_value, b.begin, text_of(b) + " divides by zero");
    const auto kind = b.kind == QuantityKind::number ? a.kind : QuantityKind::number;
    return computed(a, b, kind, [&] { return quotient(a.value, b.value); });
}

bool FormulaReader::are_alike(const Term& a, const Term& b, std::string_view what_for) {
    if (a.kind == b.kind) return true;
    // The plain number is the one to mend: most likely its unit was left out.
    const auto& odd = a.kind == QuantityKind::number ? a : b;
    const auto& other = &odd == &a ? b : a;
    auto message = text_of(odd) + " is " + with_article(odd.kind) + " and " + text_of(other) +
                   " is " + with_article(other.kind) + ": they cannot be " + std::string{what_for};
    if (odd.is_bare) message += "; give " + text_of(odd) + " a unit";
    static_cast<void>(scan_.fail(ErrorCode::invalid_value, odd.begin, std::move(message)));
    return false;
}

// ---- the result ---------------------------------------------------------------------------------

Result<Quantity> FormulaReader::read(QuantityKind wanted, LengthUnit bare) {
    if (auto term = whole()) {
        if (const auto quantity = as_wanted(*term, wanted, bare)) return *quantity;
    }
    return scan_.error();
}

std::optional<Quantity> FormulaReader::as_wanted(Term term, QuantityKind wanted, LengthUnit bare) {
    if (term.is_bare && wanted != QuantityKind::number) {
        const auto value =
            wanted == QuantityKind::length ? in_nanometres(term.value, bare) : term.value;
        if (!value) return fail_out_of_range(term);
        term.kind = wanted;
        term.value = *value;
    }
    if (term.kind != wanted) {
        auto message = "this gives " + with_article(term.kind) + " where " + with_article(wanted) +
                       " is needed";
        const bool lacks_unit = term.kind == QuantityKind::number && wanted == QuantityKind::length;
        if (lacks_unit) message += "; give the numbers that are lengths a unit, as in 22 in";
        return scan_.fail(ErrorCode::invalid_value, term.begin, std::move(message));
    }
    Quantity quantity{.kind = wanted};
    if (wanted != QuantityKind::length) {
        quantity.value = nearest_double(term.value);
        return quantity;
    }
    const auto length = nearest_length(term.value);
    if (!length) return fail_out_of_range(term);
    quantity.length = *length;
    return quantity;
}

std::nullopt_t FormulaReader::fail_out_of_range(const Term& term) {
    return scan_.fail(ErrorCode::out_of_range, term.begin,
                      text_of(term) + " is too large or too fine to work with");
}

std::string FormulaReader::text_of(const Term& term) const {
    return quoted(scan_.text().substr(term.begin, term.end - term.begin));
}

}  // namespace engine

// Reads one formula in a single pass, left to right, with exact values.
#pragma once

#include "engine/measure/formula.h"
#include "engine/measure/formula_names.h"
#include "engine/measure/fraction.h"
#include "engine/measure/literal.h"
#include "engine/measure/text_scan.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace engine {

// What a name stands for: nothing known, a value, or a formula that has none itself.
enum class NameState { unknown, known, without_value };

struct NameValue {
    NameState state = NameState::unknown;
    Quantity quantity;
};

using NameSource = std::function<NameValue(std::string_view)>;

// A part of a formula that has been read.
struct Term {
    QuantityKind kind = QuantityKind::number;
    Fraction
        value;  // nanometres, degrees, or plain; meaningless in the branch of an `if` not taken
    std::size_t begin = 0;
    std::size_t end = 0;
    bool is_bare = false;            // a number and nothing else but its sign
    bool is_joined_by_dash = false;  // `18-3/8`
};

class FormulaReader {
public:
    FormulaReader(std::string_view formula, const NameSource& names)
        : scan_{formula}, names_{names} {}

    Result<Quantity> read(QuantityKind wanted, LengthUnit bare);

private:
    using MaybeTerm = std::optional<Term>;  // no value: the scan holds the error

    MaybeTerm whole();
    MaybeTerm sum_of_products();
    MaybeTerm product_of_signed();
    MaybeTerm signed_primary(NumberPlace place);
    MaybeTerm primary(NumberPlace place);
    MaybeTerm literal(NumberPlace place);
    MaybeTerm in_parentheses();
    MaybeTerm name_or_call();
    MaybeTerm named_value(std::string_view name, std::size_t begin);

    MaybeTerm call(std::string_view name, std::size_t begin);
    MaybeTerm arguments(Function function, std::string_view name);
    MaybeTerm least_or_most(Function function, std::string_view name);
    MaybeTerm size_of();
    MaybeTerm to_step(Function function, std::string_view name);
    MaybeTerm choice();
    MaybeTerm branch(bool is_taken);
    std::optional<bool> condition();
    std::optional<int> compared(const Term& a, const Term& b);
    bool take_comma(std::string_view shape);

    MaybeTerm added(const Term& a, const Term& b, bool is_minus);
    MaybeTerm multiplied(const Term& a, const Term& b);
    MaybeTerm divided(const Term& a, const Term& b);
    // What a and b give together; `value` is asked for only where the value matters.
    template <class Value>
    MaybeTerm computed(const Term& a, const Term& b, QuantityKind kind, Value value) {
        Term term;
        term.kind = kind;
        term.begin = a.begin;
        term.end = b.end;
        if (is_skipping_) return term;
        const std::optional<Fraction> result = value();
        if (!result) return fail_out_of_range(term);
        term.value = *result;
        return term;
    }
    bool are_alike(const Term& a, const Term& b, std::string_view what_for);
    bool goes_deeper();

    std::optional<Quantity> as_wanted(Term term, QuantityKind wanted, LengthUnit bare);
    std::nullopt_t fail_out_of_range(const Term& term);
    std::string text_of(const Term& term) const;

    TextScan scan_;
    const NameSource& names_;
    int depth_ = 0;
    bool is_skipping_ = false;  // inside a branch that is not taken: kinds are checked, values not
};

}  // namespace engine

// Formulas with dimensions over named values: `width/2 - 1/8 in`.
#pragma once

#include "engine/measure/length.h"
#include "engine/measure/tape.h"
#include "engine/result.h"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

enum class QuantityKind { length, angle, number };

std::string_view name_of(QuantityKind kind);  // "length", "angle", "plain number"

// A value with its dimension.
struct Quantity {
    QuantityKind kind = QuantityKind::number;
    Length length;       // when kind is length: rounded to the nanometre
    double value = 0.0;  // when kind is number: plain; when angle: degrees

    bool operator==(const Quantity&) const = default;
};

// What a name stands for while a formula is read; no value when there is no such name.
using NameLookup = std::function<std::optional<Quantity>(std::string_view)>;

// Evaluates one formula that must give `wanted`. A formula that is nothing but a bare number or
// mixed number is read in `bare` when a length is wanted, and in degrees when an angle is wanted;
// inside a longer formula a bare number is a plain number, and adding it to a length is an error
// that says which term. Functions: min, max, abs, round(x, step), floor(x, step), ceil(x, step),
// if(condition, then, else); comparisons < <= > >= == != serve `if`.
// Errors: invalid_text (where: "column N"), unknown_name, invalid_value (mixed dimensions, division
// by zero), out_of_range. `where` always names the column from 1.
Result<Quantity> evaluate(std::string_view formula,
                          QuantityKind wanted,
                          LengthUnit bare,
                          const NameLookup& lookup);

struct NamedFormula {
    std::string_view name;
    std::string_view formula;
    QuantityKind kind = QuantityKind::length;
};

// Evaluates formulas that may refer to one another in any order; results in the order given. Those
// on a cycle get an error of code cycle whose message names the loop: "a needs b needs a".
std::vector<Result<Quantity>> evaluate_all(std::span<const NamedFormula> formulas, LengthUnit bare);

// The names that a formula refers to, in order of first use; what cannot be read yields none.
std::vector<std::string> names_in(std::string_view formula);

// A copy of the formula in which the name `before` is replaced by `after`, all else untouched.
std::string with_name_replaced(std::string_view formula,
                               std::string_view before,
                               std::string_view after);

// Whether a text may serve as a name: a letter, then letters, digits, `_`; words inside may be
// parted by single spaces ("step height"); not a unit, not a function.
bool is_name(std::string_view text);

}  // namespace engine

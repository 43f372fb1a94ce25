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
// mixed number, with or without a sign, is read in `bare` when a length is wanted, and in degrees
// when an angle is wanted; inside a longer formula a bare number is a plain number, and adding it
// to a length is an error that says which term. Literals are those of read_length and `45 deg`.
// Functions: min, max, abs, round(x, step), floor(x, step), ceil(x, step), if(condition, then,
// else); comparisons < <= > >= == != serve `if`. The branch of an `if` that is not taken must be of
// the same kind, but may divide by zero.
//
// How `-` and `/` are read next to numbers:
// - `a - b` with spaces always subtracts: `18 - 3/8` is 17 5/8.
// - Tight between a whole number and a fraction less than one, at the start of a term, the dash
//   joins: `18-3/8` is 18 3/8, alone as in `width - 18-3/8 in`, and `1'-6"` is 18 in. Behind * or /
//   it subtracts: `width/2-1/8 in`. Where * or / follows, as in `5-1/2*2`, it could be meant in two
//   ways and is an error.
// - A fraction or mixed number and its unit bind more tightly than *: `2*3/8 in` is twice 3/8 in.
//   Divisions still go from left to right: `width/3/4` is a twelfth of the width.
//
// Values are exact inside; a length is rounded to the nanometre, a number or an angle to a double,
// once, at the end. A named number or angle stands for the simplest fraction with that double.
//
// Errors: invalid_text (also for more than 100 parentheses inside one another), unknown_name,
// invalid_value (mixed dimensions, division by zero), out_of_range. `where` is always "column N",
// from 1.
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
// on a cycle get an error of code cycle whose message names the loop: "a needs b needs a" (of a
// long one its beginning). Those that refer to a formula without a value get invalid_value. Of two
// formulas with one name the first serves the others.
std::vector<Result<Quantity>> evaluate_all(std::span<const NamedFormula> formulas, LengthUnit bare);

// The names that a formula refers to, in order of first use; parts that cannot be read yield none.
std::vector<std::string> names_in(std::string_view formula);

// A copy of the formula in which the name `before` is replaced by `after`, all else untouched.
std::string with_name_replaced(std::string_view formula,
                               std::string_view before,
                               std::string_view after);

// Whether a text may serve as a name: a letter first, then letters, digits, `_`; words inside may
// be parted by single spaces ("step height", "shelf 2"); not a unit, not a function.
bool is_name(std::string_view text);

}  // namespace engine

// Dimensions as the window needs them: values, limits, texts, and whether a typed formula will do.
#pragma once

#include "editor/derived.h"
#include "engine/measure/formula.h"
#include "engine/result.h"
#include "model/project/project.h"

#include <optional>
#include <string>
#include <string_view>

namespace editor {

// The value of a dimension; none when its formula failed or there is no such dimension.
std::optional<engine::Quantity> value_of(const Derived& derived, std::string_view dimension);

struct Limits {
    std::optional<engine::Quantity> least;
    std::optional<engine::Quantity> most;
};

// What can be read of the dimension's least and most.
Limits limits_of(const Derived& derived, const model::Dimension& dimension);

// Whether the formula is nothing but a value, so that dragging it loses no relation.
bool is_plain_value(const model::Project& project, const model::Dimension& dimension);

// The value as the tape shows it; with "~" in front where it lies between two marks.
std::string quantity_text(const engine::Quantity& quantity, const engine::TapeStyle& shown);

// The value as a formula that gives exactly it.
std::string formula_of(const engine::Quantity& quantity, const engine::TapeStyle& shown);

// Whether lengths are shown in millimetres, centimetres or metres.
bool is_metric(const engine::TapeStyle& shown);

// One step of a pull: a mark of the tape; of decimal forms so many of the last decimal (1, 2 or 5
// times a power of ten) that it is half a millimetre, since a finer one is lost under the hand.
engine::Length hand_step(const engine::TapeStyle& shown);

// The value moved by a number of steps - of hand_step, degrees, units - onto a whole step and kept
// within the limits.
engine::Quantity stepped(const engine::Quantity& start,
                         double steps,
                         const Limits& limits,
                         const engine::TapeStyle& shown);

// Whether a project would have a value for the dimension, were this its formula. The error's
// `where` is the column.
engine::Result<engine::Quantity> tried_formula(const model::Project& project,
                                               std::string_view dimension,
                                               const model::Formula& formula);

// Whether a formula that no dimension stands on, such as a limit, has a value in the project.
engine::Result<engine::Quantity> tried_limit(const model::Project& project,
                                             engine::QuantityKind kind,
                                             const model::Formula& formula);

// Why the dimension's value is not within its own limits, in words; none when it is, and when one
// of them has no value.
std::optional<std::string> reason_by_limits(const model::Project& project,
                                            std::string_view dimension);

// A formula of any other field, with the dimensions that there are now.
engine::Result<engine::Quantity> tried_length(const Derived& derived,
                                              const model::Formula& formula);

// "= 61 in": what a formula that is more than a value comes to as a length; empty where it is a
// value, or has none.
std::string comes_to(const Derived& derived, const model::Formula& formula);

}  // namespace editor

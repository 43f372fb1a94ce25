// What must hold for every thing that an edit lets in: names, readable formulas, sound numbers.
#pragma once

#include "engine/result.h"
#include "model/project/project.h"

#include <string>
#include <string_view>
#include <vector>

namespace model {

// The fault of a name, as the end of a sentence that begins with the thing; empty for a good one.
std::string fault_of_name(std::string_view name);

// Whether a formula can be read; its value and the names in it are not looked at. Error:
// invalid_text, `where` followed by the column.
engine::Result<engine::Done> check_formula(const Formula& formula,
                                           engine::QuantityKind wanted,
                                           const std::string& where);

// Checks a thing and all it holds; within a list names must differ. Defined for what an edit can
// carry. Errors name the thing: "frame counter, plane left".
template <class T>
engine::Result<engine::Done> check_thing(const T& thing, const std::string& where);

}  // namespace model

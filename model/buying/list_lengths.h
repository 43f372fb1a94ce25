// Lengths as they are typed into a price list.
#pragma once

#include "engine/measure/tape.h"
#include "engine/result.h"

#include <array>
#include <string_view>

namespace model {

// As engine::read_length, and also with a decimal comma: "6,1 m". What could be meant in two ways
// is refused: "6,096 m", and in a list parted by semicolons "6.096 m" too. More than zero and less
// than a kilometre. Errors without a place.
engine::Result<engine::Length> read_list_length(std::string_view text,
                                                engine::LengthUnit bare,
                                                char separator);

// Thickness, width and length: "1/8 x 48 x 96 in", "6 mm x 48 in x 96 in". A number without a unit
// is in that of the next one that has one, else in `bare`. Errors without a place.
engine::Result<std::array<engine::Length, 3>> read_sheet_size(std::string_view text,
                                                              engine::LengthUnit bare,
                                                              char separator);

}  // namespace model

// Counts as they are typed into a price list.
#pragma once

#include <optional>
#include <string_view>

namespace model {

// A whole number without a sign; none for anything else, and for more than anybody counts.
std::optional<int> count_in(std::string_view text);

// How many are in a "box of 100"; 1 for "each" and for nothing, none where it says something else.
std::optional<int> box_count(std::string_view per);

}  // namespace model

// How near a name that was typed comes to one that is known.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace model {

// Without spaces and in small letters: those are what people write differently, not what they mean
// differently.
std::string compact_name(std::string_view text);

// How many characters to put in, take out or change (Levenshtein distance).
std::size_t changes_between(std::string_view a, std::string_view b);

}  // namespace model

// Which words of a text stay on one line: those of a measure.
#pragma once

#include <string_view>
#include <vector>

namespace model {

// Between spaces.
std::vector<std::string_view> words_of(std::string_view text);

// The text between spaces at which a line may end: not between a number, its fraction and its unit
// ("~57 9/32 in", "4 ft 6 in"), nor behind "grip". Common typographic practice: no break within a
// measure.
std::vector<std::string_view> kept_together(std::string_view text);

}  // namespace model

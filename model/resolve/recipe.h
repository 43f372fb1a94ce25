// The ways in which two members can meet, as rows of one table.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace model {

struct Recipe {
    std::string_view name;  // as in a project's file: "staggered lap"
    std::string_view what;  // one sentence for the window, no trailing stop
    // Of two members that meet; otherwise it is made where a member asks for it: a
    // splice, a foot.
    bool is_chosen = true;
};

// All of them; the first one is what is used where nothing else is said.
std::span<const Recipe> recipes();

// The row of that name among those that are chosen; empty names the first; none when there is no
// such row.
std::optional<std::uint8_t> find_recipe(std::string_view name);

// "staggered lap, flush, ...", for the mend of a finding.
std::string recipe_names();

}  // namespace model

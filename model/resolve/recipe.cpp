#include "model/resolve/recipe.h"

#include <array>

namespace model {
namespace {

constexpr std::array<Recipe, 6> table{
    Recipe{"staggered lap",
           "the lower member lies behind the upper one's leg and is riveted to it"},
    Recipe{"flush", "both lie in one layer; the lower member butts, a gusset laps both inside"},
    Recipe{"mitre", "both are cut at 45 degrees in one layer, a gusset laps both inside"},
    Recipe{"coped lap", "as the staggered lap, but a leg that is in the way is notched alone"},
    Recipe{"corner cleat", "the lower member butts; a short angle joins it to the upper one"},
    Recipe{"strap", "both lie in one layer; a flat bar laps both"}};

}  // namespace

std::span<const Recipe> recipes() { return table; }

std::optional<std::uint8_t> find_recipe(std::string_view name) {
    if (name.empty()) return std::uint8_t{0};
    for (std::uint8_t i = 0; i < table.size(); ++i) {
        if (table[i].name == name) return i;
    }
    return std::nullopt;
}

}  // namespace model

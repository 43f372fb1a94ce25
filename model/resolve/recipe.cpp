#include "model/resolve/recipe.h"

#include "model/resolve/recipe_row.h"

#include <array>

namespace model {
namespace {

constexpr std::size_t count = 8;

const std::array<RecipeRow, count>& rows() {
    static const std::array<RecipeRow, count> table{staggered_lap(), flush(), mitre(),  coped_lap(),
                                                    corner_cleat(),  strap(), splice(), foot()};
    return table;
}

}  // namespace

const RecipeRow& recipe_row(std::uint8_t recipe) { return rows()[recipe < count ? recipe : 0]; }

std::span<const Recipe> recipes() {
    static const std::array<Recipe, count> told = [] {
        std::array<Recipe, count> all;
        for (std::size_t i = 0; i < count; ++i) all[i] = rows()[i].told;
        return all;
    }();
    return told;
}

std::optional<std::uint8_t> find_recipe(std::string_view name) {
    if (name.empty()) return std::uint8_t{0};
    for (std::uint8_t i = 0; i < count; ++i) {
        if (rows()[i].told.is_chosen && rows()[i].told.name == name) return i;
    }
    return std::nullopt;
}

std::uint8_t recipe_made_by_itself(std::string_view name) {
    std::uint8_t i = 0;
    while (i + 1U < count && rows()[i].told.name != name) ++i;
    return i;
}

std::string recipe_names() {
    std::string names;
    for (const auto& recipe : recipes()) {
        if (!recipe.is_chosen) continue;
        if (!names.empty()) names += ", ";
        names += recipe.name;
    }
    return names;
}

}  // namespace model

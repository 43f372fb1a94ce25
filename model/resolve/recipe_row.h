// What a way of meeting does to the bars that meet, step by step. Each recipe is one row, in a file
// of its own.
#pragma once

#include "model/resolve/part_maker.h"
#include "model/resolve/recipe.h"
#include "model/resolve/skeleton.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace model {

// Why a meeting cannot be made by a recipe, and what to use there; empty where it can. Silent: the
// two do not meet in such a way that anything would have to be said, unless it was asked for there.
struct Unsuited {
    std::string why;
    std::string use_instead;
    bool is_silent = false;
    std::string_view made_as = {};  // of the staggered lap: the recipe that stands in for it
};

// What bar a recipe cuts its parts from.
enum class PartForm { none, angle, flat };

struct RecipeRow {
    Recipe told;
    Unsuited (*unsuited)(const FrameSkeleton&, const Meeting&) = nullptr;
    // Whether the lower bar lies behind the upper one's layer where they share a face.
    bool (*lies_behind)(const Bar& upper, const Bar& lower) = nullptr;
    bool in_one_layer = false;  // of the face that they share
    // Cuts both ends before anything is trimmed; null: ends stay square.
    void (*cut_ends)(FrameSkeleton&, const Meeting&, Nm end_gap) = nullptr;
    PartForm cut_from = PartForm::none;
    bool trims_at_upper = true;  // the lower bar stops before the upper one
    bool notches = false;        // each wall of the lower bar stops by itself
    bool laps_directly = true;   // touching walls of the two are fastened to each other
    // Puts in what joins one end of the lower bar to the upper one. Gives why there is no room;
    // empty when it is done. Null: nothing is needed.
    Unsuited (*add_parts)(PartMaker&, const Corner&) = nullptr;
};

const RecipeRow& recipe_row(std::uint8_t recipe);

// The number of a row that nobody chooses; there is one of that name.
std::uint8_t recipe_made_by_itself(std::string_view name);

// The rows, each from its own file.
RecipeRow staggered_lap();
RecipeRow flush();
RecipeRow mitre();
RecipeRow coped_lap();
RecipeRow corner_cleat();
RecipeRow strap();
RecipeRow splice();
RecipeRow foot();

}  // namespace model

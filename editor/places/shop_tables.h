// All sheets of Make, in their order.
#pragma once

#include "editor/places/make.h"

#include <array>

namespace editor {

inline constexpr std::array<ShopTable, 7> shop_tables{
    ShopTable::cuts,     ShopTable::saw,   ShopTable::drills, ShopTable::fasteners,
    ShopTable::assembly, ShopTable::bench, ShopTable::paper};

}  // namespace editor

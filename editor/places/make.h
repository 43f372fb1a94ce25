// Make: what to cut, what to drill and what to set, in the order of the work.
#pragma once

#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/places/joined_lines.h"
#include "editor/places/sorted_table.h"
#include "editor/selection.h"

#include <string_view>

namespace editor {

enum class ShopTable { cuts, drills, fasteners };

constexpr std::string_view name_of(ShopTable table) {
    return table == ShopTable::cuts     ? "cut list"
           : table == ShopTable::drills ? "drilling"
                                        : "fasteners";
}

struct MakeState {
    ShopTable table = ShopTable::cuts;
    TableOrder cuts;
    TableOrder drills;
    TableOrder fasteners;
    JoinedMemo joined;

    TableOrder& shown() {
        return table == ShopTable::cuts ? cuts : table == ShopTable::drills ? drills : fasteners;
    }
};

// Clicking a line selects its pieces.
void draw_make(const Area& area,
               const Derived& derived,
               const model::Catalogue& catalogue,
               MakeState& state,
               Selection& selection);

}  // namespace editor

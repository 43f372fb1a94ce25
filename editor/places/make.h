// Make: what to cut, what to drill and what to set, in the order of the work.
#pragma once

#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/places/joined_lines.h"
#include "editor/places/saw_list.h"
#include "editor/places/sorted_table.h"
#include "editor/selection.h"

#include <string_view>

namespace editor {

enum class ShopTable { cuts, saw, drills, fasteners };

constexpr std::string_view name_of(ShopTable table) {
    return table == ShopTable::cuts     ? "cut list"
           : table == ShopTable::saw    ? "at the saw"
           : table == ShopTable::drills ? "drilling"
                                        : "fasteners";
}

struct MakeState {
    ShopTable table = ShopTable::cuts;
    TableOrder cuts;
    SawListState saw;
    TableOrder drills;
    TableOrder fasteners;
    JoinedMemo joined;

    // Null where it is no table.
    TableOrder* shown() {
        switch (table) {
            case ShopTable::cuts:
                return &cuts;
            case ShopTable::drills:
                return &drills;
            case ShopTable::fasteners:
                return &fasteners;
            case ShopTable::saw:
                break;
        }
        return nullptr;
    }
};

// Clicking a line selects its pieces.
std::optional<Change> draw_make(const Area& area,
                                const Derived& derived,
                                const model::Catalogue& catalogue,
                                MakeState& state,
                                Selection& selection);

}  // namespace editor

// Make: what to cut, what to drill and what to set, in the order of the work.
#pragma once

#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/places/joined_lines.h"
#include "editor/places/saw_list.h"
#include "editor/places/sorted_table.h"
#include "editor/selection.h"

#include <cstddef>
#include <memory>
#include <string_view>

namespace editor {

enum class ShopTable { cuts, saw, drills, fasteners, assembly, bench, paper };

constexpr std::string_view name_of(ShopTable table) {
    return table == ShopTable::cuts        ? "cut list"
           : table == ShopTable::saw       ? "at the saw"
           : table == ShopTable::drills    ? "drilling"
           : table == ShopTable::fasteners ? "fasteners"
           : table == ShopTable::assembly  ? "assembly"
           : table == ShopTable::bench     ? "at the bench"
                                           : "on paper";
}

struct AssemblyMemo;  // editor/assembly_memo.h
struct BenchDesk;     // editor/bench_desk.h
struct PaperDesk;     // editor/paper_desk.h

struct MakeState {
    ShopTable table = ShopTable::cuts;
    TableOrder cuts;
    SawListState saw;
    TableOrder drills;
    TableOrder fasteners;
    JoinedMemo joined;
    std::shared_ptr<AssemblyMemo> assembly;  // the order of the project as it was asked for last
    std::size_t step = 0;                    // of the assembly: the one that is shown
    bool shows_step = false;                 // it was chosen by the keyboard
    std::shared_ptr<BenchDesk> bench;        // what has been ticked at the bench
    std::shared_ptr<PaperDesk> paper;        // what is to be printed, and how

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
            case ShopTable::assembly:
            case ShopTable::bench:
            case ShopTable::paper:
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

// Prove: whether it fits, holds together and is square, as far as that is checked.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/measured_line.h"
#include "editor/opening_verdicts.h"
#include "editor/places/sorted_table.h"
#include "editor/room_facts.h"
#include "editor/room_rows.h"
#include "editor/selection.h"
#include "editor/square_faces.h"

#include <optional>
#include <string_view>
#include <vector>

namespace editor {

struct FindingHands;

enum class ProveSheet { checks, room, square, as_built };

std::string_view name_of(ProveSheet sheet);

// What is worked out for a sheet, once for each state of the project.
template <class Row>
struct SheetMemo {
    std::optional<WorkedOutOf> of;
    double reach_mm = 0.0;
    std::vector<Row> rows;
};

struct ProveState {
    ProveSheet sheet = ProveSheet::checks;
    std::optional<model::CheckKind> kind;  // whose findings are listed; none: all
    float told_height = 0.0F;              // of what the finding told whole shows below its text
    TableOrder findings;
    TableOrder room;
    TableOrder square;
    std::optional<std::size_t> shown_row;  // of the sheet's table: it is measured in the view
    SheetMemo<RoomRow> room_rows;
    SheetMemo<SquareFace> faces;
    SheetMemo<OpeningVerdict> verdicts;

    // The table of the sheet; null where it has none.
    TableOrder* shown() {
        return sheet == ProveSheet::checks   ? &findings
               : sheet == ProveSheet::room   ? &room
               : sheet == ProveSheet::square ? &square
                                             : nullptr;
    }
};

// What a sheet of Prove is drawn from. `facts` are those of the room, null where they are not asked
// for: only the sheet Room needs them.
struct ProveFacts {
    const Derived& derived;
    const model::Catalogue& catalogue;
    const RoomFacts* facts = nullptr;
};

std::optional<Change> draw_prove(const Area& area,
                                 const ProveFacts& now,
                                 ProveState& state,
                                 Selection& selection,
                                 FindingHands hands);

// What the view measures for the row that was chosen.
std::vector<MeasuredLine> lines_to_show(const ProveState& state, const Derived& derived);

}  // namespace editor

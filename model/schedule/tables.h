// The schedules as rows, for files and for the tables on the screen.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"
#include "model/schedule/bar_plan.h"
#include "model/schedule/laying.h"

#include <string>
#include <vector>

namespace model {

struct AssemblyOrder;  // model/assembly/assembly_order.h

// One line per mark and hand, in order of mark.
struct CutRow {
    Index mark = 0;
    Hand hand = Hand::none;
    int quantity = 0;
    PieceKind kind = PieceKind::bar;
    std::string section;    // section id; of a part of sheet "gusset 1/8 x 3 1/4"
    std::string alloy;      // of a panel its material
    engine::Length length;  // between long points
    engine::Length width;   // of a part of sheet; else zero
    std::string end_a;      // at the datum end, by told_end_words: "square"
    std::string end_b;      // at the far end
    std::string frames;     // names, "; " between
    std::string members;    // names, "; " between
    std::vector<Index> pieces;
};

std::vector<CutRow> cut_rows(const Project& project,
                             const Catalogue& catalogue,
                             const Resolved& resolved);

// One line per hole of each mark and hand, in the order of drill_order: drill and fence are changed
// as seldom as possible. Every piece of the mark and hand is drilled so.
//
// How a line is read at the drill press. Lay the leg flat on its outer face, heel against the
// fence, so that the other leg stands up along the fence, away from you. `datum_end` then says at
// which hand the datum end lies, and from_datum is measured from there. Pieces of the opposite hand
// have the same numbers on the same legs, with the datum end at the other hand.
struct DrillRow {
    Index mark = 0;
    Hand hand = Hand::none;
    std::string leg;  // "leg a"
    int hole = 0;     // number on the mark, from 1, along the piece
    int pieces = 0;   // how many there are of the mark and hand: CutRow::quantity
    engine::Length from_datum;
    engine::Length gauge;  // from the heel to the middle of the hole: what the fence is set to
    engine::Length diameter;
    std::string drill;
    HoleOperation operation = HoleOperation::drill;
    std::string fastener;    // "blind rivet 1/8, grip 4-4"; several with "; " between
    std::string mates_with;  // marks, "; " between
    int setup = 0;           // serial number of the fence setting, from 1: same gauge, same number
    Index pattern_hole = 0;  // in Resolved::holes
    TableEnd datum_end = TableEnd::left;
};

std::vector<DrillRow> drill_rows(const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved);

// What is set for good, then nuts, then the temporary pins of the dry fit (see sheet_pins.h), which
// are taken out and used again: of those as many as the step of the assembly order holds that holds
// most at once; without an order, enough for the frame that needs most.
struct FastenerRow {
    std::string fastener;  // "blind rivet 1/8, grip 4-4" or "sheet pin 1/8"
    std::string diameter;
    std::string grip_or_length;
    engine::Length stack;  // zero where several stacks share the row
    int needed = 0;
    int spares = 0;
    int joints = 0;
};

std::vector<FastenerRow> fastener_rows(const Project& project,
                                       const Catalogue& catalogue,
                                       const Resolved& resolved,
                                       const AssemblyOrder* order = nullptr);

// One line per piece on a bar, in cutting order, by bar_plans. Pieces that are on no bar are in
// bar_findings.
struct BarRow {
    int bar = 0;  // from 1
    std::string section;
    engine::Length bar_length;
    int sequence = 0;  // from 1
    Index mark = no_index;
    engine::Length length;
    engine::Length start;   // from the bar's end as it was bought; the first is the end trim
    engine::Length offcut;  // what is left of the bar after its last cut; on every line of it
    BarFrom from = BarFrom::shop;
    std::optional<Cents> price;  // of a bar to be bought
    engine::Length halved_from;  // of one that the seller cuts in half: its whole length; else zero
    Index at_saw = no_index;     // in Stock::at_saw
    Index stock = 0;             // in the project
    Index piece = 0;

    bool is_offcut() const { return from == BarFrom::offcut; }
};

std::vector<BarRow> bar_rows(const Project& project,
                             const Catalogue& catalogue,
                             const Resolved& resolved,
                             const std::vector<BarPlan>& plans);

// As the project's tape shows it, "~" in front where it does not lie on a mark of the tape.
std::string length_text(const Project& project, engine::Length length);

}  // namespace model

// All that is drawn and written about a mark and hand, put together once.
#pragma once

#include "model/schedule/tables.h"
#include "model/schedule/unrolled_piece.h"

#include <string>
#include <vector>

namespace model {

struct MarkFacts {
    CutRow cut;
    std::vector<DrillRow> drills;  // in the order in which they are drilled
    UnrolledPiece flat;            // its datum end above, its inner faces up
    std::vector<int> numbers;      // of flat.holes: as in DrillRow::hole

    Index pattern() const { return cut.pieces.front(); }
    bool is_sheet() const { return is_of_sheet(cut.kind); }
};

// In order of mark; as drawn before opposite.
std::vector<MarkFacts> mark_facts(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved);

// "Datum end: square. Far end: mitred 45 deg.", "Both ends: square.".
std::string ends_sentence(const MarkFacts& facts);

// "drill #30", "match-drill #30", "tap 8-32".
std::string work_words(const DrillRow& row);

// "A1", "A1 opposite hand".
std::string name_of_mark(const Resolved& resolved, const MarkFacts& facts);

}  // namespace model

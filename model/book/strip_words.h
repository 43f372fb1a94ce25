// What stands on a paper of a drill strip, in words.
#pragma once

#include "model/book/drill_strips.h"
#include "model/book/mark_facts.h"
#include "model/book/strip_tiles.h"

#include <map>
#include <string>
#include <vector>

namespace model {

// A paper of a strip and what it is of. All must outlive it.
struct StripPart {
    const Project* project = nullptr;
    const Resolved* resolved = nullptr;
    const MarkFacts* facts = nullptr;
    const UnrolledPiece* outside = nullptr;  // seen from outside, datum end above
    const StripTile* tile = nullptr;
    const StripTile* next = nullptr;  // of the same walls
    PrinterScale printer;
};

// "A7 opposite hand".
std::string strip_name(const StripPart& part);

// "part 2 of 3"; empty where there is one alone.
std::string strip_part_words(const StripPart& part);

// "for 4 pieces, part 2 of 3".
std::string strip_count_words(const StripPart& part);

// "leg a, outside".
std::string strip_leg_words(const UnrolledWall& wall);

// How its upper edge is laid: "lay off 27 1/2 in from datum end". With a tab it is the heavy line
// below that: "lay the heavy line at 27 1/2 in".
std::string strip_start_words(const StripPart& part, bool has_tab);

// Beside an arrow, of the edge or line that is laid: "upper edge:", "27 1/2 in from datum end".
std::vector<std::string> strip_arrow_words(const StripPart& part, bool has_tab);

// On its tab, which no edge of is laid anywhere: "tab, beyond the piece".
std::string strip_tab_words(const StripPart& part);

// What comes behind its lower edge: "part 3: at 54 1/4 in".
std::string strip_end_words(const StripPart& part);

// What is done at the holes of a mark.
class StripTools {
public:
    explicit StripTools(const MarkFacts& facts);

    // "all #30" where the same is done at all holes; else empty.
    std::string drill_words() const;

    // Beside a hole: its number, and what is done there where holes differ: "9",
    // "9: match-drill #30".
    std::string hole_words(Index hole) const;

private:
    struct AtHole {
        int number = 0;
        std::string tools;  // "#30", "match-drill #25, tap 10-24"
    };

    std::map<Index, AtHole> at_holes_;
    std::string common_;  // empty where they differ, or there is none
    bool is_matched_ = false;
};

}  // namespace model

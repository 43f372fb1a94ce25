// The order of work at the saw: one setting of the stop after another, over all bars.
#pragma once

#include "model/schedule/tables.h"

#include <string>
#include <vector>

namespace model {

// Pieces of one mark and hand that are cut from one bar at one setting of the stop.
struct StopRow {
    int setting = 0;        // from 1; the longest first, so that each bar is cut longest first too
    std::string section;    // the stop is set anew for each section
    engine::Length length;  // what the stop is set to: between long points
    int bar = 0;            // BarRow::bar
    int pieces = 0;
    Index mark = no_index;
    Hand hand = Hand::none;  // none where both ends are square: the saw makes both hands alike
    int opposite = 0;        // how many of them are of the opposite hand, which is written on them
    std::string ends;        // "square" or what the saw must do at each end
};

// From the rows of the bars: all of a section and length follow each other across bars, and in them
// both hands of a mark. Two lengths that a stop cannot tell apart (0.1 mm, common practice) stay
// two settings where their pieces have different marks.
std::vector<StopRow> stop_rows(const Project& project,
                               const Catalogue& catalogue,
                               const Resolved& resolved,
                               const std::vector<BarRow>& bars);

// What the saw does at both ends of a piece: "square", or each end's own words.
std::string ends_at_saw(const Project& project,
                        const Catalogue& catalogue,
                        const Resolved& resolved,
                        Index piece);

std::string stop_csv(const Project& project,
                     const Resolved& resolved,
                     const std::vector<StopRow>& rows);

// One line for each thing that a bar becomes, from its datum end: "end trim", the pieces, "offcut"
// or "scrap" with what to write on the metal.
std::string nest_csv(const Project& project,
                     const Catalogue& catalogue,
                     const Resolved& resolved,
                     const std::vector<BarRow>& bars);

// What to write on an offcut: "angle 1 x 1 x 1/8, 37 1/4 in, of bar 3".
std::string offcut_label(const Project& project, const BarRow& last);

}  // namespace model

// The lines of an estimate, kind by kind.
#pragma once

#include "model/buying/estimate.h"
#include "model/buying/sheet_layout.h"
#include "model/schedule/tables.h"

#include <string_view>

namespace model {

// How an estimate says what no bar or sheet can be had for.
inline constexpr std::string_view that_no_bar_holds = " that no bar holds";
inline constexpr std::string_view that_no_sheet_holds = " that no sheet holds";

// "1 part", "3 parts".
std::string counted(std::size_t count, const std::string& one, const std::string& many);

// A line with a sum, or one whose thing the total lacks.
void add_line(Estimate& estimate, EstimateLine line, const std::string& thing);

// Adds lines, what has no price, and the weight of what is bought.
void add_bar_lines(Estimate& estimate,
                   const Project& project,
                   const Catalogue& catalogue,
                   const std::vector<BarPlan>& plans,
                   const PriceList* prices);

// Without those that the plans lay onto sheets that were paid for.
void add_sheet_lines(Estimate& estimate,
                     const Project& project,
                     const Catalogue& catalogue,
                     const std::vector<SheetPlan>& plans);

// Less what Estimate::paid holds already.
void add_box_lines(Estimate& estimate, std::vector<FastenerRow> needed, const PriceList* prices);

}  // namespace model

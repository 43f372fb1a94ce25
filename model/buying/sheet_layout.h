// Parts of sheet laid onto sheets as they are sold, so that each can be cut free by cuts from edge
// to edge (guillotine cuts). Laid out by several simple rules of which the best is kept: not proven
// to need the fewest sheets.
#pragma once

#include "model/buying/paid_sheets.h"
#include "model/buying/price_list.h"
#include "model/buying/sheet_packing.h"
#include "model/resolve/resolved.h"

#include <array>
#include <string>
#include <vector>

namespace model {

struct LaidPart {
    Index row = 0;             // in sheet_rows
    std::array<Nm, 2> at{};    // of its lower left corner on the sheet
    std::array<Nm, 2> size{};  // as it lies
    bool is_turned = false;    // its length lies across the sheet
};

struct LaidSheet {
    std::array<Nm, 2> size{};  // usable: across, along
    std::optional<Cents> price;
    bool has_grain = false;  // along it; no part is turned
    bool is_paid = false;    // it is there already
    std::vector<LaidPart> parts;
};

// All parts of one material and thickness.
struct SheetPlan {
    std::string material;
    engine::Length thickness;
    bool is_size_assumed = false;  // nobody states one: usual_sheet_size
    std::vector<LaidSheet> sheets;
    std::vector<Index> too_large;  // in sheet_rows, once for each part that no sheet holds
    std::vector<Index> left_out;   // for which the sheets that can be had run out
    double used = 0.0;             // the part of the sheets' area that is parts
};

// 48 x 96 in where lengths are shown in inches or feet, else 1250 x 2500 mm: common practice.
std::array<engine::Length, 2> usual_sheet_size(const engine::TapeStyle& shown);

// One plan for each material and thickness, in the order of sheet_rows. Sheets are those that were
// paid for, which are used first whatever their size, and those of the list (null: none are
// stated), of that material and just that thickness. A part counts as the least
// rectangle that holds it; the shop's kerf lies between two of them, nothing at the sheet's edge:
// sizes are usable ones. Shims are left out: they are cut from what is at hand.
std::vector<SheetPlan> sheet_plans(const Project& project,
                                   const Catalogue& catalogue,
                                   const Resolved& resolved,
                                   const PriceList* prices,
                                   const std::vector<PaidSheet>& paid = {});

}  // namespace model

// Sheets on paper: each to scale with the parts that are cut from it.
#pragma once

#include "engine/drawing/document.h"
#include "model/buying/sheet_layout.h"
#include "model/schedule/sheet.h"

#include <string>
#include <vector>

namespace model {

// Adds a page for each sheet, and a bookmark to the first of them. Nothing where there is none.
void add_sheet_pages(engine::Document& document,
                     const Project& project,
                     const Resolved& resolved,
                     const std::vector<SheetPlan>& plans,
                     const std::vector<SheetRow>& rows,
                     engine::Paper paper);

}  // namespace model

// The schedule of parts of sheet: panels, gussets and shims, one line a mark.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <string>
#include <vector>

namespace model {

struct SheetRow {
    Index mark = 0;
    Hand hand = Hand::none;
    int quantity = 0;
    std::string part;      // what it is and what it is for: "panel back"
    std::string material;  // empty for a shim, which is cut from what is at hand
    engine::Length thickness;
    engine::Length width;  // of the least rectangle that holds it
    engine::Length length;
    std::string outline;  // "rectangle", or "see drawing"
    int cut_outs = 0;
    Index outline_of = no_index;  // in Resolved::outlines; none: the rectangle, whole
    // Of a door or a drawer front: what is free between the members, along the face's two axes.
    std::optional<std::array<engine::Length, 2>> opening;
    double weight_kg = 0.0;  // of one
};

std::vector<SheetRow> sheet_rows(const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved);

std::string sheet_csv(const Project& project,
                      const Resolved& resolved,
                      const std::vector<SheetRow>& rows);

}  // namespace model

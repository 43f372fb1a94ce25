// Paper at full size that is wrapped round a bar, or laid on a small part of sheet: centres are
// punched through it instead of being measured.
#pragma once

#include "engine/drawing/document.h"
#include "engine/drawing/paper.h"
#include "engine/result.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <string>
#include <vector>

namespace model {

// What a printer makes of a length across and down the sheet: measured over stated. What is drawn
// is divided by it.
struct PrinterScale {
    double across = 1.0;
    double down = 1.0;

    bool operator==(const PrinterScale&) const = default;
};

// How long the ruler is that is measured: 4 in where the project shows inches, else 100 mm.
engine::Length measured_ruler(const Project& project);

// From what that ruler measures on a sheet that was printed without correction; what is not given
// is taken to be right. Errors: out_of_range for what is more than 5 % off, which is no printer's
// fault but a sheet that was not printed at 100 %.
engine::Result<PrinterScale> printer_scale(const Project& project,
                                           std::optional<engine::Length> across,
                                           std::optional<engine::Length> down);

struct StripWish {
    engine::Paper paper = engine::Paper::a4;
    PrinterScale printer;
    bool has_errors = false;  // the project is not fit to cut from, which each sheet then says
};

struct DrillStrips {
    engine::Document document;
    // Of pieces that are larger than the paper has room for, a sentence each with what to do.
    std::vector<std::string> refused;
};

// Seen from outside, as the paper lies on the bar. Marks without holes and panels have none: an
// empty document has no pages.
DrillStrips drill_strips(const Project& project,
                         const Catalogue& catalogue,
                         const Resolved& resolved,
                         const StripWish& wish);

}  // namespace model

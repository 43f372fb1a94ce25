// A sheet that papers of drill strips are cut out of: what it says of itself, and its rulers.
#pragma once

#include "engine/drawing/page.h"
#include "model/book/drill_strips.h"
#include "model/book/strip_packing.h"
#include "model/book/strip_ruler.h"

#include <string>
#include <vector>

namespace model {

inline constexpr double strip_gap = 4.0;  // between papers, for the scissors

// What a sheet has for papers, mm.
struct StripField {
    double left = 0.0;
    double top = 0.0;
    PackedSize size;
};

StripField strip_field(engine::PaperSize paper);

struct StripSheet {
    std::size_t number = 1;
    std::size_t of = 1;
    std::string holds;                 // "A1 as drawn, parts 1 to 3 of 4; A2"
    std::vector<std::string> refused;  // marks that have no strip
    std::string stamp;                 // of the project
};

// Without its papers.
engine::Page strip_sheet(const Project& project, const StripWish& wish, const StripSheet& sheet);

}  // namespace model

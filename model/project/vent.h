// How large the openings for air in a panel must be, and where they lie. Sizes openings only: a
// vent for gas, batteries or a heater follows the appliance's instructions and the local code.
#pragma once

#include "engine/measure/length.h"
#include "engine/result.h"

#include <array>
#include <optional>
#include <string_view>
#include <variant>
#include <vector>

namespace model {

struct RoundVent {
    engine::Length diameter;
};

struct RectangularVent {
    engine::Length width;
    engine::Length height;
};

// What takes air out, and the openings that are to let as much in. The ratio of the two net free
// areas is 1 unless the maker of the fan or the appliance asks for more: an intake at least as
// large as the exhaust is common practice.
struct VentDemand {
    std::variant<RoundVent, RectangularVent> exhaust;
    double exhaust_free_area = 1.0;  // the part of the opening that its cover lets air pass
    double ratio = 1.0;              // intake to exhaust
    double intake_free_area = 1.0;
    int count = 1;              // openings, all alike
    engine::Length height;      // of each
    engine::Length graduation;  // the marks of the tape that widths lie on
};

// Net free area: of the opening, times the part that its cover lets air pass.
struct VentSizing {
    double exhaust_net_mm2 = 0.0;
    double needed_net_mm2 = 0.0;
    double needed_gross_mm2 = 0.0;  // of all openings together
    engine::Length width;           // of each: rounded up to a mark
    double reached_net_mm2 = 0.0;   // with that width; never less than needed
};

// The error's `where` names the input: "exhaust", "exhaust cover", "ratio", "intake cover",
// "openings", "height", "graduation".
engine::Result<VentSizing> vent_sizing(const VentDemand& demand);

// Openings that are alike, in one row in a sheet.
struct VentRow {
    int count = 1;
    engine::Length width;     // along the sheet's first axis
    engine::Length height;    // along its second one
    engine::Length gap;       // between one and the next
    bool is_stacked = false;  // along the second axis: one above another
    // Of the first opening, from the sheet's lower corner; none: the row is in the middle.
    std::array<std::optional<engine::Length>, 2> lower_corner;
    std::array<engine::Length, 2> sheet;  // as large as it is once it is cut to the frame
    // What centring rounds down to; nothing: the nanometre.
    engine::Length graduation;
};

struct VentOpening {  // from the sheet's lower corner
    std::array<engine::Length, 2> least;
    std::array<engine::Length, 2> most;

    bool operator==(const VentOpening&) const = default;
};

// The openings, `least_sheet_land` or more apart and from every edge. The error's `where` names the
// input: "openings", "width", "height", "gap", "lower corner".
engine::Result<std::vector<VentOpening>> vent_openings(const VentRow& row);

// Whether a cut-out is one of a row's openings by its name: "intake 3" of the row "intake".
bool is_opening_of(std::string_view cut_out, std::string_view row);

}  // namespace model

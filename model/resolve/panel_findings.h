// What laying out panels has to say.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/finding.h"
#include "model/resolve/resolved.h"

#include <string>
#include <vector>

namespace model {

Subject panel_subject(const Frame& frame, const Panel& panel);

Finding unknown_material(const Panel& panel, Subject subject);
Finding bad_thickness(Subject subject);
Finding panel_no_room(Subject subject);
Finding panel_in_parts(Subject subject);
// A fixed panel that nothing holds.
inline constexpr const char* unfastened_code = "panel_unfastened";
Finding nothing_behind(Subject subject);
Finding little_behind(Subject subject);  // too little for a fastener
Finding cut_out_left_out(const CutOut& cut_out, const std::string& why, Subject subject);

// Between the sheet and the members along some of its edges, named by their planes.
Finding stands_off(const std::vector<std::string>& planes,
                   Nm gap,
                   const engine::TapeStyle& shown,
                   Subject subject);

// Panels are riveted; this id is that of something else, or of nothing.
Finding not_a_rivet(const Catalogue& catalogue, const std::string& id, Subject subject);

// No fastener has room on these members that it touches.
Finding no_room_on(const std::vector<std::string>& members,
                   const std::string& helps,
                   Subject subject);

Finding wide_pitch(Nm gap, Nm pitch, const engine::TapeStyle& shown, Subject subject);

}  // namespace model

// Which fastener a lap gets: what the joint says, else what the shop says, else by the plates'
// thickness; and its length by the stack.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace model {

// How the hole through a plate is made.
struct HoleMaking {
    Index drill = no_index;  // in the catalogue
    Nm diameter = 0;
    HoleOperation operation = HoleOperation::drill;
    Index tap = no_index;  // in Catalogue::screws: the thread that is then cut in it
};

// A fastener with the room that it needs, whatever its kind.
struct FastenerChoice {
    FastenerSpec spec;
    Nm diameter = 0;  // nominal: edge distance and pitch count in it
    Nm head_radius = 0;
    Nm driver_radius = 0;  // of what turns a screw; 0: the shop's rivet tool sets it
    Nm tail_radius = 0;    // clear about what forms or stands on the blind side
    Nm tail_reach = 0;     // how far it reaches beyond the stack there before it is set, at most
    Nm slack = 0;          // of the holes about the shank: by so much two marks may miss each other
    HoleMaking head_hole;  // in all plates but the last
    HoleMaking far_hole;   // in the last one
    Nm grip_least = 0;
    Nm grip_most = 0;
};

// Why there is none, with the mend.
struct NoFastener {
    std::string code;
    std::string what;
    std::string mend;
    std::vector<FindingNumber> numbers;
};

// Either one that fits the stack, or why not.
struct FastenerAnswer {
    std::optional<FastenerChoice> choice;
    NoFastener why_not;
};

FastenerAnswer choose_rivet(const Catalogue& catalogue,
                            const Shop& shop,
                            std::string_view wanted_id,
                            MeasureSystem system,
                            Nm thickest,
                            Nm stack);

// That rivet in the length for the stack.
FastenerAnswer fit_rivet(const Catalogue& catalogue,
                         const Shop& shop,
                         const BlindRivet& rivet,
                         Nm stack);

// The next thinner rivet or screw of the same system, of several the first in the catalogue; null
// when there is none.
const BlindRivet* next_thinner(const std::vector<BlindRivet>& rivets, const BlindRivet& than);
const MachineScrew* next_thinner(const std::vector<MachineScrew>& screws, const MachineScrew& than);

// "blind rivet 1/8".
const std::string& fastener_id(const Catalogue& catalogue, const FastenerSpec& spec);

}  // namespace model

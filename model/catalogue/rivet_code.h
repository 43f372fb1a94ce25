// What an inch blind rivet's code says: "4-6" is 4/32 in thick and holds up to 6/16 in.
#pragma once

#include "engine/measure/length.h"

#include <optional>
#include <string_view>

namespace model {

struct RivetCode {
    engine::Length diameter;
    engine::Length grip_most;

    bool operator==(const RivetCode&) const = default;
};

// No value for a text that is no such code. IFI-114 (an article on rivet sizes and US Army TM
// 10-5410-221-14/1, Table 4-3, read).
std::optional<RivetCode> read_rivet_code(std::string_view text);

}  // namespace model

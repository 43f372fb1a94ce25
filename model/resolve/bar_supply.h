// The bars and offcuts of a stock, as lengths.
#pragma once

#include "engine/result.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <vector>

namespace model {

struct OfferedBar {
    Nm length = 0;
    int left = 0;  // how many can be had
};

struct BarSupply {
    std::vector<OfferedBar> offers;      // longest first
    std::vector<Nm> offcuts;             // shortest first, one entry each
    std::vector<engine::Error> refused;  // lengths that cannot be used, and why
};

BarSupply bar_supply(const Project& project, const Resolved& resolved, const Stock& stock);

}  // namespace model

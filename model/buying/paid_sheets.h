// Sheets that were paid for: parts are laid onto these before another one is bought.
#pragma once

#include "model/buying/purchases.h"

#include <array>
#include <string>
#include <vector>

namespace model {

struct PaidSheet {
    std::string what;                    // as sheet_goods names it
    std::array<engine::Length, 3> size;  // thickness, across, along
    int count = 0;

    bool operator==(const PaidSheet&) const = default;
};

// A sheet of which the size cannot be read is none.
std::vector<PaidSheet> paid_sheets(const std::vector<Purchase>& paid);

}  // namespace model

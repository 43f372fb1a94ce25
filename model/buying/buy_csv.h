// The list to buy from, as the text of buy.csv.
#pragma once

#include "model/buying/estimate.h"

#include <string>

namespace model {

// A row for each line, prices as plain decimal numbers; then the sum, the tax, the total, a row for
// each thing that the total lacks, and the weights.
std::string buy_csv(const Estimate& estimate, const engine::TapeStyle& shown);

}  // namespace model

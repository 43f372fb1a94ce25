// The price lists that a project's suppliers refer to, once they are read. Reading is the caller's
// business, since what follows from a project never waits for a file.
#pragma once

#include "model/buying/price_list.h"

#include <filesystem>
#include <map>
#include <string>

namespace model {

// By Supplier::prices: those that are read, and of those that cannot be read the reason.
using PriceLibrary = std::map<std::string, engine::Result<PriceList>, std::less<>>;

// All lists of a project's suppliers; a relative file starts at `folder`, where the project lies.
PriceLibrary read_price_lists(const Project& project,
                              const Catalogue& catalogue,
                              const std::filesystem::path& folder);

// Null where the supplier's list is not read.
const PriceList* prices_of(const PriceLibrary& library, const Supplier& supplier);

}  // namespace model

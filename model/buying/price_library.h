// The price lists that a project's suppliers refer to, once they are read, and what was bought.
// Reading is the caller's business, since what follows from a project never waits for a file.
#pragma once

#include "model/buying/price_list.h"
#include "model/buying/purchases.h"

#include <filesystem>
#include <map>
#include <string>

namespace model {

struct PriceLibrary {
    // By Supplier::prices: those that are read, and of those that cannot be read the reason.
    // Errors: unknown_name where there is no such file or it cannot be opened; bad_file where
    // something in it cannot be read.
    std::map<std::string, engine::Result<PriceList>, std::less<>> lists;
    engine::Result<Purchases> bought{Purchases{}};  // or why it cannot be read

    // Null where it cannot be read.
    const Purchases* purchases() const { return bought ? &*bought : nullptr; }
};

// All lists of a project's suppliers, and what was bought for the project in that file; a relative
// file of prices starts at the folder where the project lies. A project that lies nowhere has an
// empty file: nothing was bought for it.
PriceLibrary read_price_library(const Project& project,
                                const Catalogue& catalogue,
                                const std::filesystem::path& project_file);

// Null where the supplier's list is not read.
const PriceList* prices_of(const PriceLibrary& library, const Supplier& supplier);

}  // namespace model

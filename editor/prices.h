// The price lists that the project's suppliers refer to, kept as they stand in their files.
#pragma once

#include "model/buying/price_library.h"

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace editor {

struct Desk;

// What is read of them, and for which files.
struct PricesRead {
    std::shared_ptr<const model::PriceLibrary> library;  // never null
    std::filesystem::path folder;
    std::vector<std::string> files;
    engine::LengthUnit unit = engine::LengthUnit::inch;  // of bare lengths
};

std::shared_ptr<const model::PriceLibrary> no_prices();

// Once in each frame: reads them where the suppliers' files are others.
void tend_prices(Desk& desk);

// The files may have been changed by another program: the window has come back.
void read_prices_again(Desk& desk);

// Where a supplier's list lies; relative ones from the project's folder.
std::filesystem::path price_list_path(const Desk& desk, const std::string& file);

// Writes a list with all that the project needs, to be filled in. Errors: duplicate_name where
// there is such a file; invalid_value where the project lies in no folder yet; cannot_write.
engine::Result<engine::Done> begin_price_list(Desk& desk, const std::string& file);

}  // namespace editor

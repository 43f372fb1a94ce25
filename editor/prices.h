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
    std::filesystem::path project_file;
    std::vector<std::string> files;
    engine::LengthUnit unit = engine::LengthUnit::inch;  // of bare lengths
    std::string chosen{};                                // who was bought from then
    int last_purchase = 0;  // the highest number of one that was seen, in any project
};

std::shared_ptr<const model::PriceLibrary> no_prices();

// Another project has come.
void begin_prices(Desk& desk);

// Once in each frame: reads them where the suppliers' files are others, or another one is chosen:
// who chooses looks at the prices, and may just have written them. Where the project was saved
// under another name, what was bought goes with it; what lay beside that name is put aside.
void tend_prices(Desk& desk);

// What was bought is that, now. Of a project that lies in no file yet it is kept until it does.
// Errors: cannot_write, and why what was bought before cannot be read; then nothing is changed.
engine::Result<engine::Done> put_purchases(Desk& desk, model::Purchases purchases);

// The files may have been changed by another program: the window has come back.
void read_prices_again(Desk& desk);

// Where a supplier's list lies; relative ones from the project's folder.
std::filesystem::path price_list_path(const Desk& desk, const std::string& file);

// Whether there is none of that name yet, and a folder for it.
bool can_begin_price_list(const Desk& desk, const std::string& file);

// Writes a list with all that the project needs, to be filled in. Errors: duplicate_name where
// there is such a file; invalid_value where the project lies in no folder yet; cannot_write.
engine::Result<engine::Done> begin_price_list(Desk& desk, const std::string& file);
// The same; how it went is told along the bottom of the window.
void begin_price_list_told(Desk& desk, const std::string& file);

}  // namespace editor

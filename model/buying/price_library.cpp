#include "model/buying/price_library.h"

#include "engine/files/whole_file.h"

namespace model {
namespace {

// Far more than anybody types; keeps a wrong file from being read for minutes.
constexpr std::uintmax_t most_list_bytes = 2U << 20U;

engine::Result<PriceList> price_list_in(const std::filesystem::path& folder,
                                        const std::string& file,
                                        const Catalogue& catalogue,
                                        engine::LengthUnit bare) {
    if (file.empty()) {
        return engine::Error{.code = engine::ErrorCode::unknown_name,
                             .where = "",
                             .message = "no price list is named; choose its file"};
    }
    const auto text = engine::read_whole_file(folder / file, most_list_bytes);
    if (!text)
        return engine::Error{engine::ErrorCode::unknown_name, text.error().where,
                             text.error().message};
    return read_price_list(*text, file, catalogue, bare);
}

}  // namespace

PriceLibrary read_price_library(const Project& project,
                                const Catalogue& catalogue,
                                const std::filesystem::path& project_file) {
    PriceLibrary library;
    const auto folder = project_file.parent_path();
    for (const auto& supplier : project.suppliers) {
        if (library.lists.contains(supplier.prices)) continue;
        library.lists.emplace(supplier.prices, price_list_in(folder, supplier.prices, catalogue,
                                                             engine::bare_unit(project.shown)));
    }
    if (!project_file.empty()) library.bought = read_purchases(path_of_purchases(project_file));
    return library;
}

const PriceList* prices_of(const PriceLibrary& library, const Supplier& supplier) {
    const auto at = library.lists.find(supplier.prices);
    return at == library.lists.end() || !at->second ? nullptr : &*at->second;
}

}  // namespace model

#include "editor/prices.h"

#include "editor/desk.h"
#include "editor/purchases_along.h"
#include "engine/files/whole_file.h"
#include "model/buying/price_list_template.h"
#include "model/buying/purchase_made.h"

#include <algorithm>
#include <system_error>
#include <utility>

namespace editor {
namespace {

std::vector<std::string> files_of(const model::Project& project) {
    std::vector<std::string> files;
    for (const auto& supplier : project.suppliers) files.push_back(supplier.prices);
    return files;
}

using Read = engine::Result<model::PriceList>;

// What is told of a row names its line: a list whose rows have moved is another one.
bool has_same_lines(const model::PriceList& a, const model::PriceList& b) {
    return std::ranges::equal(
        a.bars, b.bars, {}, [](const auto& bar) { return bar.line.number; },
        [](const auto& bar) { return bar.line.number; });
}

bool is_same(const Read& a, const Read& b) {
    if (a.has_value() != b.has_value()) return false;
    return a ? *a == *b && has_same_lines(*a, *b) : a.error() == b.error();
}

bool is_same(const model::PriceLibrary& a, const model::PriceLibrary& b) {
    const bool is_same_bought =
        a.bought && b.bought ? *a.bought == *b.bought
                             : !a.bought && !b.bought && a.bought.error() == b.bought.error();
    return is_same_bought && std::ranges::equal(a.lists, b.lists, [](const auto& x, const auto& y) {
               return x.first == y.first && is_same(x.second, y.second);
           });
}

void take(Desk& desk, model::PriceLibrary library) {
    auto& last = desk.prices.last_purchase;
    if (library.bought)
        last = std::max(last, model::last_number(*library.bought, project_of(desk)));
    if (is_same(library, *desk.prices.library)) return;
    desk.prices.library = std::make_shared<const model::PriceLibrary>(std::move(library));
    forget_derived(desk);
}

void read(Desk& desk, std::vector<std::string> files) {
    auto library = model::read_price_library(project_of(desk), *desk.catalogue, desk.file);
    if (desk.file.empty() || !are_purchases_filed(desk))
        library.bought = desk.prices.library->bought;
    desk.prices.files = std::move(files);
    desk.prices.chosen = project_of(desk).shop.supplier;
    desk.prices.unit = engine::bare_unit(project_of(desk).shown);
    take(desk, std::move(library));
}

}  // namespace

std::shared_ptr<const model::PriceLibrary> no_prices() {
    static const auto none = std::make_shared<const model::PriceLibrary>();
    return none;
}

void begin_prices(Desk& desk) {
    desk.prices.project_file = desk.file;
    desk.prices.library = no_prices();
    forget_derived(desk);
    read(desk, files_of(project_of(desk)));
}

void tend_prices(Desk& desk) {
    auto files = files_of(project_of(desk));
    const bool was_filed = are_purchases_filed(desk);
    const bool is_filed = file_purchases(desk).has_value();
    const bool is_same_unit = engine::bare_unit(project_of(desk).shown) == desk.prices.unit;
    const bool is_same_choice = desk.prices.chosen == project_of(desk).shop.supplier;
    const bool is_same =
        files == desk.prices.files && (files.empty() || (is_same_unit && is_same_choice));
    if (is_same && was_filed == is_filed) return;
    read(desk, std::move(files));
}

void read_prices_again(Desk& desk) {
    const auto filed = file_purchases(desk);
    if (!filed) desk.ui.notice = Notice{engine::to_text(filed.error()), true};
    read(desk, files_of(project_of(desk)));
}

engine::Result<engine::Done> put_purchases(Desk& desk, model::Purchases purchases) {
    if (!desk.prices.library->bought) return desk.prices.library->bought.error();
    const auto filed = file_purchases(desk);
    if (!filed) return filed;
    if (!desk.file.empty()) {
        const auto written = engine::write_whole_file(model::path_of_purchases(desk.file),
                                                      model::purchases_text(purchases));
        if (!written) return written;
    }
    auto library = *desk.prices.library;
    library.bought = std::move(purchases);
    take(desk, std::move(library));
    return engine::Done{};
}

std::filesystem::path price_list_path(const Desk& desk, const std::string& file) {
    return desk.file.parent_path() / file;
}

bool can_begin_price_list(const Desk& desk, const std::string& file) {
    std::error_code unseen;
    return !desk.file.empty() && !file.empty() &&
           !std::filesystem::exists(price_list_path(desk, file), unseen);
}

engine::Result<engine::Done> begin_price_list(Desk& desk, const std::string& file) {
    if (desk.file.empty()) {
        return engine::Error{engine::ErrorCode::invalid_value, file,
                             "the list lies beside the project: save the project first"};
    }
    const auto path = price_list_path(desk, file);
    std::error_code unseen;
    if (std::filesystem::exists(path, unseen)) {
        return engine::Error{engine::ErrorCode::duplicate_name, path.string(),
                             "there is such a file already; it is left as it is"};
    }
    const auto& now = derived(desk);
    auto written = engine::write_whole_file(
        path, model::price_list_template(*now.project, *desk.catalogue, now.resolved));
    if (written) read_prices_again(desk);
    return written;
}

void begin_price_list_told(Desk& desk, const std::string& file) {
    const auto begun = begin_price_list(desk, file);
    desk.ui.notice = begun ? Notice{"Begun: " + price_list_path(desk, file).string() +
                                    "; fill in its prices in a spreadsheet"}
                           : Notice{engine::to_text(begun.error()), true};
}

}  // namespace editor

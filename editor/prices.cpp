#include "editor/prices.h"

#include "editor/desk.h"
#include "engine/files/whole_file.h"
#include "model/buying/price_list_template.h"

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

bool is_same(const Read& a, const Read& b) {
    if (a.has_value() != b.has_value()) return false;
    return a ? *a == *b : a.error() == b.error();
}

bool is_same(const model::PriceLibrary& a, const model::PriceLibrary& b) {
    return std::ranges::equal(a, b, [](const auto& x, const auto& y) {
        return x.first == y.first && is_same(x.second, y.second);
    });
}

void read(Desk& desk, std::vector<std::string> files) {
    auto folder = desk.file.parent_path();
    auto library = model::read_price_lists(project_of(desk), *desk.catalogue, folder);
    const bool is_other = !is_same(library, *desk.prices.library);
    desk.prices.folder = std::move(folder);
    desk.prices.files = std::move(files);
    desk.prices.unit = engine::bare_unit(project_of(desk).shown);
    if (!is_other) return;
    desk.prices.library = std::make_shared<const model::PriceLibrary>(std::move(library));
    forget_derived(desk);
}

}  // namespace

std::shared_ptr<const model::PriceLibrary> no_prices() {
    static const auto none = std::make_shared<const model::PriceLibrary>();
    return none;
}

void tend_prices(Desk& desk) {
    auto files = files_of(project_of(desk));
    const bool is_same_place = desk.file.parent_path() == desk.prices.folder;
    const bool is_same_unit = engine::bare_unit(project_of(desk).shown) == desk.prices.unit;
    if (files == desk.prices.files && is_same_place && (is_same_unit || files.empty())) return;
    read(desk, std::move(files));
}

void read_prices_again(Desk& desk) {
    if (!desk.prices.files.empty()) read(desk, files_of(project_of(desk)));
}

std::filesystem::path price_list_path(const Desk& desk, const std::string& file) {
    return desk.file.parent_path() / file;
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

}  // namespace editor

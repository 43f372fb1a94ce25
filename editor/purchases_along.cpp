#include "editor/purchases_along.h"

#include "editor/desk.h"
#include "editor/put_aside.h"
#include "engine/files/whole_file.h"
#include "model/buying/purchases.h"

namespace editor {
namespace {

namespace fs = std::filesystem;

engine::Result<engine::Done> take_along(const Desk& desk) {
    const auto own = model::path_of_purchases(desk.prices.project_file);
    const auto there = model::path_of_purchases(desk.file);
    if (is_one_file(own, there)) return engine::Done{};
    const auto aside = put_aside(there);
    if (!aside) return aside;
    const auto* bought = desk.prices.library->purchases();
    if (bought == nullptr) return copy_unread(own, there);
    if (bought->all.empty()) return engine::Done{};
    return engine::write_whole_file(there, model::purchases_text(*bought));
}

}  // namespace

engine::Result<engine::Done> file_purchases(Desk& desk) {
    if (are_purchases_filed(desk)) return engine::Done{};
    const auto taken = take_along(desk);
    if (taken) desk.prices.project_file = desk.file;
    return taken;
}

bool are_purchases_filed(const Desk& desk) {
    return desk.file.empty() || desk.prices.project_file == desk.file;
}

bool has_purchases_in_no_file(const Desk& desk) {
    const auto* bought = desk.prices.library->purchases();
    if (!are_purchases_filed(desk)) return bought == nullptr || !bought->all.empty();
    return desk.file.empty() && bought != nullptr &&
           !model::paid_for(*bought, project_of(desk)).empty();
}

}  // namespace editor

#include "editor/buy_commands.h"

#include "editor/by_name.h"
#include "editor/desk.h"
#include "editor/open_outside.h"
#include "editor/purchase_desk.h"

#include <algorithm>
#include <cstddef>
#include <filesystem>
#include <optional>
#include <system_error>

namespace editor {
namespace {

const model::Supplier* supplier_in_hand(const Desk& desk) {
    const auto& project = project_of(desk);
    if (const auto* chosen = by_name(project.suppliers, project.shop.supplier)) return chosen;
    return project.suppliers.empty() ? nullptr : &project.suppliers.front();
}

const model::Supplier* without_list(const Desk& desk) {
    const auto& suppliers = project_of(desk).suppliers;
    const auto found = std::ranges::find_if(suppliers, [&](const model::Supplier& it) {
        return can_begin_price_list(desk, it.prices);
    });
    return found == suppliers.end() ? nullptr : &*found;
}

// In Purchases::all, of those that the program noted; none where there is none.
std::optional<std::size_t> last_purchase(const Desk& desk, bool that_counts) {
    const auto* bought = desk.prices.library->purchases();
    if (bought == nullptr) return std::nullopt;
    for (std::size_t i = bought->all.size(); i-- > 0;) {
        const auto& purchase = bought->all[i];
        if (purchase.number != 0 &&
            model::counts_as_paid(purchase, project_of(desk)) == that_counts)
            return i;
    }
    return std::nullopt;
}

}  // namespace

bool has_suppliers(const Desk& desk) { return !project_of(desk).suppliers.empty(); }

void buy_from_next(Desk& desk) {
    const auto& project = project_of(desk);
    const auto& suppliers = project.suppliers;
    auto shop = project.shop;
    const auto now = std::ranges::find(suppliers, shop.supplier, &model::Supplier::name);
    const auto next = now == suppliers.end() ? suppliers.begin() : now + 1;
    shop.supplier = next == suppliers.end() ? std::string() : next->name;
    auto change = change_of(model::SetShop{shop});
    change.label = shop.supplier.empty() ? "Buy as the stock states" : "Buy from " + shop.supplier;
    if (!submit(desk, change)) return;
    desk.ui.place = Place::buy;
    desk.ui.notice = Notice{shop.supplier.empty() ? "Bars are bought as the stock states them"
                                                  : "Bars are bought from " + shop.supplier};
}

void change_supplier(Desk& desk) {
    const auto* supplier = supplier_in_hand(desk);
    if (supplier == nullptr) return;
    desk.ui.dialog = SupplierForm{.supplier = *supplier, .instead_of = supplier->name};
}

bool lacks_a_list(const Desk& desk) { return without_list(desk) != nullptr; }

void begin_lacking_list(Desk& desk) {
    if (const auto* supplier = without_list(desk))
        begin_price_list_told(desk, std::string(supplier->prices));
}

bool has_list_to_open(const Desk& desk) {
    const auto* supplier = supplier_in_hand(desk);
    std::error_code unseen;
    return supplier != nullptr && !supplier->prices.empty() &&
           std::filesystem::exists(price_list_path(desk, supplier->prices), unseen);
}

void open_price_list(Desk& desk) {
    const auto path = price_list_path(desk, supplier_in_hand(desk)->prices);
    const auto opened = open_outside(path);
    desk.ui.notice = opened ? Notice{"Handed to the system: " + path.string() +
                                     "; it is read again when you come back"}
                            : Notice{engine::to_text(opened.error()), true};
}

bool has_more_to_buy(const Desk& desk) {
    return desk.derived_memo && (desk.derived_memo->summary.bars > 0 || has_goods_to_buy(desk));
}

bool has_purchases(const Desk& desk) { return last_purchase(desk, true).has_value(); }

bool has_undone_purchases(const Desk& desk) { return last_purchase(desk, false).has_value(); }

void take_last_purchase_back(Desk& desk) {
    take_purchase_back(desk, *last_purchase(desk, true));
    desk.ui.place = Place::buy;
}

void count_last_purchase_again(Desk& desk) {
    count_purchase_again(desk, *last_purchase(desk, false));
    desk.ui.place = Place::buy;
}

void strike_out_last_purchase(Desk& desk) {
    forget_purchase(desk, *last_purchase(desk, false));
    desk.ui.place = Place::buy;
}

void buy_all(Desk& desk) { buy(desk, model::BoughtPart::all); }

}  // namespace editor

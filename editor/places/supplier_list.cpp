#include "editor/places/supplier_list.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>

namespace editor {
namespace {

std::string sum_words(const model::Offering& offering) {
    if (!offering.estimate) return engine::to_text(offering.estimate.error());
    return model::total_in_words(*offering.estimate);
}

std::optional<Change> choose(const Derived& derived, const std::string& supplier) {
    if (derived.project->shop.supplier == supplier) return std::nullopt;
    auto shop = derived.project->shop;
    shop.supplier = supplier;
    auto change = change_of(model::SetShop{std::move(shop)});
    change.label = supplier.empty() ? "Buy as the stock states" : "Buy from " + supplier;
    return change;
}

// Rows of the list that count for nothing, with their lines and why.
void draw_not_used(const std::string& row, const model::Offering& offering) {
    constexpr std::size_t most_told = 3;
    const auto& not_used = offering.not_used;
    for (std::size_t i = 0; i < not_used.size() && i < most_told; ++i) {
        const auto words = "not used: " + engine::to_text(not_used[i]);
        draw_wrapped(words, Type::small, colour::amber);
        log_item("row " + std::to_string(i + 1) + " not used of " + row, words);
    }
    if (not_used.size() <= most_told) return;
    const auto more = std::to_string(not_used.size() - most_told) + " more rows are not used";
    draw_text(more, Type::small, colour::amber);
}

// One that can be bought from; `supplier` is null for what the stock itself states.
std::optional<Change> draw_one(const Derived& derived,
                               const model::Supplier* supplier,
                               const model::Offering* offering,
                               bool is_cheapest,
                               Dialog& dialog) {
    std::optional<Change> change;
    const std::string name = supplier == nullptr ? "" : supplier->name;
    const std::string row = supplier == nullptr ? "as stated" : name;
    if (draw_radio(row, derived.project->shop.supplier == name)) change = choose(derived, name);
    if (supplier != nullptr) {
        ImGui::SameLine();
        if (draw_button("change " + name, {.text = "Change\xE2\x80\xA6", .weight = Weight::link})) {
            dialog = SupplierForm{.supplier = *supplier, .instead_of = supplier->name};
        }
    }
    const bool is_refused = offering != nullptr && !offering->estimate;
    const std::string words = offering == nullptr ? "working it out" : sum_words(*offering);
    const bool lacks =
        offering != nullptr && offering->estimate && !offering->estimate->without.empty();
    const std::string all = words + (!is_cheapest ? ""
                                     : lacks      ? "; the cheapest, since all lack the same"
                                                  : "; the cheapest that lacks nothing");
    draw_wrapped(all, Type::small, is_refused ? colour::red : colour::quiet);
    log_item("sum of " + row, all);
    if (offering != nullptr) draw_not_used(row, *offering);
    return change;
}

// What each asks, row by row; only where there is something to compare.
void draw_side_by_side(const Derived& derived, const BuyFacts& facts) {
    const auto columns = static_cast<int>(facts.offerings.size()) + 1;
    if (columns < 3) return;
    const TableScope table("side by side", columns, ImGuiTableFlags_BordersInnerH);
    if (!table) return;
    ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch);
    for (const auto& it : facts.offerings) {
        ImGui::TableSetupColumn(it.name.c_str(), ImGuiTableColumnFlags_WidthStretch);
    }
    const FontScope small(Type::small);
    {
        const ColourScope quiet(ImGuiCol_Text, colour::quiet);
        ImGui::TableHeadersRow();
    }
    for (const auto& row : model::comparison_rows(facts.offerings, derived.project->shown)) {
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        draw_text(row.what, colour::quiet);
        for (const auto& cell : row.cells) {
            ImGui::TableNextColumn();
            draw_text_right(cell);
        }
    }
}

}  // namespace

std::optional<Change> draw_suppliers(const Derived& derived,
                                     const BuyFacts* facts,
                                     Dialog& dialog) {
    const ItemScope items("suppliers");
    draw_text("From whom", Type::strong);
    ImGui::SameLine();
    if (draw_button("new supplier", {.text = "+ supplier", .weight = Weight::link})) {
        dialog = new_supplier_form(*derived.project);
    }
    const auto cheapest = facts == nullptr ? std::nullopt : model::cheapest_of(facts->offerings);
    const auto offering = [&](std::size_t i) {
        return facts != nullptr && i < facts->offerings.size() ? &facts->offerings[i] : nullptr;
    };
    std::optional<Change> change;
    const auto& suppliers = derived.project->suppliers;
    const bool has_choice = !suppliers.empty();
    for (std::size_t i = 0; i <= suppliers.size(); ++i) {
        const IdScope id(static_cast<int>(i));
        const auto* supplier = i == 0 ? nullptr : &suppliers[i - 1];
        auto one = draw_one(derived, supplier, offering(i), has_choice && cheapest == i, dialog);
        if (one) change = std::move(one);
    }
    if (facts != nullptr) draw_side_by_side(derived, *facts);
    return change;
}

}  // namespace editor

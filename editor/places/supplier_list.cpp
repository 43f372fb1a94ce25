#include "editor/places/supplier_list.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/bar_text.h"
#include "model/buying/money.h"
#include "model/schedule/weight.h"

#include <algorithm>

namespace editor {
namespace {

std::string cents_text(model::Cents cents, const std::string& currency) {
    return price_text(static_cast<double>(cents) / 100.0, currency);
}

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
    const std::string all = words + (is_cheapest ? "; the cheapest that lacks nothing" : "");
    draw_wrapped(all, Type::small, is_refused ? colour::red : colour::quiet);
    log_item("sum of " + row, all);
    return change;
}

void draw_what_if(const Derived& derived, const BuyFacts& facts, const std::string& currency) {
    for (const auto& it : facts.what_if) {
        const auto& stock = derived.project->stock[it.stock];
        const std::string without =
            "without " + bar_text(engine::Length::from_nm(it.length), derived.project->shown) +
            " of " + stock.section;
        std::string words = without + ": ";
        if (!it.cost) {
            words += "not all could be cut";
        } else {
            const auto more = *it.cost - it.with;
            words += more > 0   ? cents_text(more, currency) + " more"
                     : more < 0 ? cents_text(-more, currency) + " less"
                                : std::string("costs the same");
        }
        draw_text(words, Type::small, colour::quiet);
        log_item(without, words);
    }
}

void draw_lines(const model::Estimate& estimate) {
    const TableScope table("estimate", 4, ImGuiTableFlags_BordersInnerH);
    if (!table) return;
    ImGui::TableSetupColumn("What", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("Count", ImGuiTableColumnFlags_WidthFixed, scaled(48));
    ImGui::TableSetupColumn("Each", ImGuiTableColumnFlags_WidthFixed, scaled(64));
    ImGui::TableSetupColumn("Sum", ImGuiTableColumnFlags_WidthFixed, scaled(72));
    {
        const FontScope small(Type::small);
        const ColourScope quiet(ImGuiCol_Text, colour::quiet);
        ImGui::TableHeadersRow();
    }
    const auto money = [](const std::optional<model::Cents>& cents) {
        return cents ? model::money_text(*cents) : std::string("?");
    };
    for (const auto& line : estimate.lines) {
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        draw_text(line.what + (line.size.empty() ? "" : ", " + line.size));
        if (!line.note.empty()) draw_hint(line.note);
        ImGui::TableNextColumn();
        draw_text_right(std::to_string(line.count), colour::quiet);
        ImGui::TableNextColumn();
        draw_text_right(money(line.each), colour::quiet);
        ImGui::TableNextColumn();
        draw_text_right(money(line.sum));
    }
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

void draw_estimate(const Derived& derived, const BuyFacts* facts) {
    const ItemScope items("estimate");
    draw_text("All that is bought", Type::strong);
    const auto* chosen = facts == nullptr ? nullptr : facts->chosen();
    if (chosen == nullptr) {
        draw_text("working it out", Type::small, colour::quiet);
        return;
    }
    if (!chosen->estimate) {
        draw_wrapped(engine::to_text(chosen->estimate.error()), Type::small, colour::red);
        return;
    }
    const auto& estimate = *chosen->estimate;
    draw_lines(estimate);
    if (estimate.tax != 0) {
        const auto tax = "tax " + cents_text(estimate.tax, estimate.currency);
        draw_text(tax, Type::small, colour::quiet);
    }
    draw_wrapped(model::total_in_words(estimate), Type::strong);
    log_item("total", model::total_in_words(estimate));
    draw_text("bought " + model::weight_text(estimate.bought_kg, derived.project->shown) +
                  ", built " + model::weight_text(estimate.built_kg, derived.project->shown) +
                  ", without fasteners",
              Type::small, colour::quiet);
    draw_what_if(derived, *facts, estimate.currency);
}

}  // namespace editor

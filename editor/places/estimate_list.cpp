#include "editor/places/estimate_list.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/places/bar_text.h"
#include "model/buying/money.h"
#include "model/schedule/bar_words.h"
#include "model/schedule/weight.h"

#include <algorithm>

namespace editor {
namespace {

std::string cents_text(model::Cents cents, const std::string& currency) {
    return price_text(static_cast<double>(cents) / 100.0, currency);
}

std::string offered_words(const model::WithoutLength& it, const engine::TapeStyle& shown) {
    if (it.halved_from == 0) return bar_text(engine::Length::from_nm(it.length), shown);
    return model::halves_offered(bar_text(engine::Length::from_nm(it.halved_from), shown));
}

void draw_what_if(const Derived& derived, const BuyFacts& facts, const std::string& currency) {
    for (const auto& it : facts.what_if) {
        const auto& stock = derived.project->stock[it.stock];
        const std::string without = "without " + offered_words(it, derived.project->shown) +
                                    " of " + stock.section + " " + stock.alloy;
        const auto words = without + ": " + difference_words(it, currency);
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
        if (!line.note.empty()) draw_wrapped(line.note, Type::small, colour::quiet);
        ImGui::TableNextColumn();
        draw_text_right(std::to_string(line.count), colour::quiet);
        ImGui::TableNextColumn();
        draw_text_right(money(line.each), colour::quiet);
        ImGui::TableNextColumn();
        draw_text_right(money(line.sum));
    }
}

void draw_purchase_link(const std::string& what,
                        const std::string& name,
                        PurchaseWish::Kind kind,
                        std::size_t index,
                        PurchaseWish& wish) {
    if (!draw_button(what + " " + name, {.text = what, .weight = Weight::link})) return;
    wish.kind = kind;
    wish.which = index;
}

void draw_purchase(const model::Project& project,
                   const model::Purchase& purchase,
                   std::size_t index,
                   PurchaseWish& wish) {
    const IdScope id(static_cast<int>(index));
    const bool counts = model::counts_as_paid(purchase, project);
    auto words = model::purchase_words(purchase);
    if (!counts) words += "; it does not count, since it was undone, taken back or never saved";
    draw_wrapped(words, Type::small, counts ? colour::ink : colour::quiet);
    if (!purchase.note.empty())
        draw_hint("The table of what was bought lies beside the project: write the true sum there");
    const auto name = "purchase " + std::to_string(index + 1);
    log_item(name, words);
    if (purchase.number != 0 && counts) {
        draw_purchase_link("take back", name, PurchaseWish::Kind::take_back, index, wish);
        draw_hint("It was not paid after all: the sum goes, the bars stay where they are");
        return;
    }
    if (!counts) {
        draw_purchase_link("count it again", name, PurchaseWish::Kind::count_again, index, wish);
        draw_hint("It was paid after all, with this sum: it brings no bars with it");
        ImGui::SameLine();
    }
    draw_purchase_link("strike it out", name, PurchaseWish::Kind::forget, index, wish);
    draw_hint("It leaves the table of what was bought, for good");
}

// By a supplier's list what has no price is not sold there, but for bars.
bool can_be_bought(const model::Estimate& estimate) {
    return estimate.from.empty() ||
           std::ranges::any_of(estimate.lines, [](const model::EstimateLine& line) {
               return line.kind == model::BuyKind::bar || line.sum.has_value();
           });
}

void draw_weights(const model::Estimate& estimate, const model::Project& project) {
    const auto words = std::string(model::bought_word(estimate)) + " " +
                       model::weight_text(estimate.bought_kg, project.shown) + ", built " +
                       model::weight_text(estimate.built_kg, project.shown) + ", without fasteners";
    draw_text(words, Type::small, colour::quiet);
    log_item("weights", words);
}

void draw_sums(const model::Estimate& estimate, const model::Project& project) {
    if (estimate.tax != 0) {
        const auto tax = "tax " + cents_text(estimate.tax, estimate.currency);
        draw_text(tax, Type::small, colour::quiet);
    }
    const auto total = model::total_in_words(estimate);
    draw_wrapped(total, Type::strong);
    log_item("total", total);
    draw_weights(estimate, project);
}

void draw_bought_button(const model::Estimate& estimate, PurchaseWish& wish) {
    if (!can_be_bought(estimate)) return;
    if (draw_button("all is bought", {.text = "All of this is bought"}))
        wish.kind = PurchaseWish::Kind::all;
    draw_hint(
        "What has a price here is noted as paid, with delivery and tax, and the bars come to "
        "the saw. The bars alone: see above");
}

// Whether anything was.
bool draw_paid(const Derived& derived, PurchaseWish& wish) {
    if (derived.prices == nullptr) return false;
    const auto& bought = derived.prices->bought;
    if (!bought) {
        draw_text("Paid", Type::strong);
        draw_wrapped("What was bought cannot be read, and is left as it is: " +
                         engine::to_text(bought.error()),
                     Type::small, colour::red);
        log_item("paid", engine::to_text(bought.error()));
        return true;
    }
    if (bought->all.empty() && derived.project->purchases.empty()) return false;
    const auto paid = model::paid_for(*bought, *derived.project);
    draw_text("Paid" + (paid.size() > 1 ? ", " + model::sum_in_words(paid) + " in all" : ""),
              Type::strong);
    for (std::size_t i = 0; i < bought->all.size(); ++i)
        draw_purchase(*derived.project, bought->all[i], i, wish);
    if (const auto words = model::words_without_rows(*bought, *derived.project); !words.empty()) {
        draw_wrapped(words, Type::small, colour::amber);
        log_item("without rows", words);
    }
    ImGui::Dummy(scaled(1, 4));
    return true;
}

}  // namespace

std::string difference_words(const model::WithoutLength& it, const std::string& currency) {
    if (!it.cost) return "not all could be cut";
    const std::string about = it.is_proven ? "" : "about ";
    const auto more = *it.cost - it.with;
    if (more == 0) return "costs " + about + "the same";
    return about + cents_text(more > 0 ? more : -more, currency) + (more > 0 ? " more" : " less");
}

void draw_estimate(const Derived& derived, const BuyFacts* facts, PurchaseWish& wish) {
    const ItemScope items("estimate");
    const bool has_paid = draw_paid(derived, wish);
    draw_text(has_paid ? "Still to buy" : "All there is to buy", Type::strong);
    const auto* chosen = facts == nullptr ? nullptr : facts->chosen();
    if (chosen == nullptr) {
        draw_text("working it out", Type::small, colour::quiet);
    } else if (!chosen->estimate) {
        draw_wrapped(engine::to_text(chosen->estimate.error()), Type::small, colour::red);
    } else if (chosen->estimate->lines.empty()) {
        draw_text("Nothing is left to buy.", colour::quiet);
        log_item("total", "nothing");
    } else {
        draw_lines(*chosen->estimate);
        draw_sums(*chosen->estimate, *derived.project);
        draw_bought_button(*chosen->estimate, wish);
        draw_what_if(derived, *facts, chosen->estimate->currency);
    }
}

}  // namespace editor

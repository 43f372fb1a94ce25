#include "editor/places/buy.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"
#include "editor/kit/widgets.h"
#include "editor/places/bar_diagram.h"
#include "editor/places/estimate_list.h"
#include "engine/measure/tape.h"
#include "model/schedule/bar_words.h"

#include <algorithm>
#include <cstdint>

namespace editor {
namespace {

std::optional<Change> draw_offers(const Derived& derived,
                                  const model::Stock& stock,
                                  OfferTyping& typing) {
    std::string text = typing.stock == stock.name ? typing.text : offers_text(stock);
    ImGui::AlignTextToFramePadding();
    draw_text("sold in", colour::quiet);
    ImGui::SameLine();
    const auto field =
        draw_field("bars of " + stock.name, text, {.hint = "16 ft at 27; 20 ft at 33.50"});
    std::optional<Change> change;
    if (field.active || field.changed || field.left) {
        // Another field's text that was refused gives way to this one's.
        if (typing.stock != stock.name || typing.text != text) typing = {stock.name, text};
        if (field.entered || field.left) change = take_typed_offers(typing, derived);
    }
    if (typing.stock == stock.name) typing.is_drawn = true;
    if (typing.stock == stock.name && !typing.trouble.empty()) {
        draw_wrapped(typing.trouble, Type::small, colour::red);
    }
    return change;
}

bool is_used(const Derived& derived, std::size_t stock) {
    return std::any_of(derived.resolved.pieces.begin(), derived.resolved.pieces.end(),
                       [&](const model::Piece& piece) { return piece.stock == stock; });
}

// What is left of a bar once all is cut: told short rather than long.
std::string rest_text(engine::Length rest, const engine::TapeStyle& shown) {
    const auto unit = engine::bare_unit(shown);
    const bool is_inch = unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot;
    const auto step =
        is_inch ? std::int64_t{engine::Length::nm_per_inch} : 10 * engine::Length::nm_per_mm;
    const auto whole = engine::Length::from_nm(std::max<std::int64_t>(rest.nm(), 0) / step * step);
    if (rest <= engine::Length{}) return "nothing left";
    if (whole == engine::Length{})
        return "less than " + bar_text(engine::Length::from_nm(step), shown) + " left";
    return bar_text(whole, shown) + " left";
}

// The piece at that place from the datum end; beside all of them, every piece of the bar.
std::vector<model::Index> pieces_at(const Derived& derived, const BarRun& run, double place_mm) {
    std::vector<model::Index> pieces;
    for (std::size_t i = run.first; i < run.first + run.count; ++i) {
        const auto& row = derived.bars[i];
        if (place_mm >= row.start.mm() && place_mm <= (row.start + row.length).mm()) {
            return {row.piece};
        }
        pieces.push_back(row.piece);
    }
    return pieces;
}

std::string bar_hint(const model::BarRow& row, const engine::TapeStyle& shown) {
    return "Bar " + model::with_half(model::from_words(row.from), row.halved_from, shown) +
           ". Click a piece to choose it, the rest to choose all of the bar";
}

void draw_bars_of(const Derived& derived, std::size_t stock, Selection& selection) {
    engine::Length longest;
    for (const auto& row : derived.bars) longest = std::max(longest, row.bar_length);
    const float width = ImGui::GetContentRegionAvail().x - scaled(136);
    for (const auto& run : bar_runs(derived)) {
        const auto& row = derived.bars[run.first];
        if (row.stock != stock) continue;
        const ImVec2 at = ImGui::GetCursorScreenPos();
        const std::string name = "bar " + std::to_string(row.bar);
        ImGui::InvisibleButton(name.c_str(), {width, scaled(20)});
        if (ImGui::IsItemClicked()) {
            const float share = width > 0.0F ? (ImGui::GetMousePos().x - at.x) / width : 0.0F;
            const auto pieces = pieces_at(derived, run, static_cast<double>(share) * longest.mm());
            selection = selection_of(*derived.project, derived.resolved, pieces);
        }
        log_item(name, rest_text(row.offcut, derived.project->shown));
        draw_hint(bar_hint(row, derived.project->shown));
        draw_bar(*ImGui::GetWindowDrawList(), at, {width, scaled(18)}, derived, run, longest,
                 ", " + rest_text(row.offcut, derived.project->shown));
    }
}

// What the plan costs, and how sure it is that none costs less.
void draw_verdict(const Derived& derived, std::size_t stock) {
    const auto plan = std::ranges::find(derived.plans, stock, &model::BarPlan::stock);
    if (plan == derived.plans.end()) return;
    const auto words = plan_words(*plan, derived.summary.is_nested, bars_currency(derived));
    if (words.empty()) return;
    draw_text(words, Type::small, colour::quiet);
    log_item("verdict", words);
}

std::optional<Change> draw_stock(const Derived& derived,
                                 std::size_t index,
                                 OfferTyping& typing,
                                 Selection& selection) {
    const auto& stock = derived.project->stock[index];
    const IdScope id(static_cast<int>(index));
    draw_text(stock.section, Type::strong);
    ImGui::SameLine();
    draw_text(stock.alloy, Type::small, colour::quiet);
    ImGui::SameLine();
    const auto taken =
        is_used(derived, index) ? bars_text(derived, static_cast<model::Index>(index)) : "not used";
    draw_text_right(taken);
    log_item("taken of " + stock.name, taken);
    auto change = draw_offers(derived, stock, typing);
    const auto& supplier = derived.project->shop.supplier;
    if (!supplier.empty()) {
        const auto words = "now bought from " + supplier + ", in the lengths of its list";
        draw_text(words, Type::small, colour::quiet);
    }
    draw_verdict(derived, index);
    draw_bars_of(derived, index, selection);
    ImGui::Dummy(scaled(1, 6));
    return change;
}

void draw_fasteners(const std::vector<model::FastenerRow>& rows) {
    draw_text("Fasteners and pins", Type::strong);
    if (rows.empty()) {
        draw_text("None", colour::quiet);
        return;
    }
    const ItemScope items("fasteners");
    const TableScope table("fasteners", 4, ImGuiTableFlags_BordersInnerH);
    if (!table) return;
    ImGui::TableSetupColumn("What", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("Needed", ImGuiTableColumnFlags_WidthFixed, scaled(56));
    ImGui::TableSetupColumn("Spares", ImGuiTableColumnFlags_WidthFixed, scaled(52));
    ImGui::TableSetupColumn("Buy", ImGuiTableColumnFlags_WidthFixed, scaled(48));
    {
        const FontScope small(Type::small);
        const ColourScope quiet(ImGuiCol_Text, colour::quiet);
        ImGui::TableHeadersRow();
    }
    for (const auto& row : rows) {
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        draw_text(row.fastener);
        ImGui::TableNextColumn();
        draw_text_right(std::to_string(row.needed), colour::quiet);
        ImGui::TableNextColumn();
        draw_text_right(std::to_string(row.spares), colour::quiet);
        ImGui::TableNextColumn();
        draw_text_right(std::to_string(row.needed + row.spares));
    }
}

}  // namespace

std::optional<Change> draw_buy(const Area& area,
                               const BuyLook& look,
                               PurchaseWish& wish,
                               OfferTyping& typing,
                               SawTyping& saw,
                               Selection& selection,
                               Dialog& dialog) {
    const PanelScope panel("Buy", area);
    const Derived& derived = look.derived;
    std::optional<Change> change;
    draw_text("Bars", Type::strong);
    if (derived.summary.bars > 0) {
        ImGui::SameLine();
        if (draw_button("bars are bought",
                        {.text = "The bars are bought", .weight = Weight::link})) {
            wish.kind = PurchaseWish::Kind::bars;
        }
        draw_hint(
            "They come to the saw with their cuts, under Make, and the plan stays as it is; what "
            "they cost is noted as paid");
    }
    for (std::size_t i = 0; i < derived.project->stock.size(); ++i) {
        keep_first(change, draw_stock(derived, i, typing, selection));
    }
    draw_rule();
    keep_first(change, draw_suppliers(derived, look.facts, dialog));
    draw_rule();
    draw_estimate(derived, look.facts, wish);
    draw_rule();
    keep_first(change, draw_saw_fields(derived, saw));
    draw_rule();
    // Until the order of assembly is known, as many pins as the largest frame takes.
    draw_fasteners(look.facts == nullptr ? derived.fasteners : look.facts->fasteners);
    return change;
}

}  // namespace editor

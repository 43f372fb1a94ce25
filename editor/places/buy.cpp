#include "editor/places/buy.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"
#include "editor/kit/widgets.h"
#include "editor/places/bar_diagram.h"
#include "engine/measure/tape.h"

#include <algorithm>
#include <cstdint>

namespace editor {
namespace {

std::string offers_text(const model::Stock& stock) {
    std::string text;
    for (const auto& bar : stock.bars) text += (text.empty() ? "" : "; ") + bar.length;
    return text;
}

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(' ');
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(' ') - first + 1));
}

std::optional<Change> draw_offers(const Derived& derived,
                                  const model::Stock& stock,
                                  OfferTyping& typing) {
    std::string text = typing.stock == stock.name ? typing.text : offers_text(stock);
    ImGui::AlignTextToFramePadding();
    draw_text("sold in", colour::quiet);
    ImGui::SameLine();
    const auto field = draw_field("bars of " + stock.name, text, {.hint = "lengths: 16 ft; 20 ft"});
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

void draw_bars_of(const Derived& derived, const std::string& section, Selection& selection) {
    engine::Length longest;
    for (const auto& row : derived.bars) longest = std::max(longest, row.bar_length);
    const float width = ImGui::GetContentRegionAvail().x - scaled(136);
    for (const auto& run : bar_runs(derived)) {
        const auto& row = derived.bars[run.first];
        if (row.section != section) continue;
        const ImVec2 at = ImGui::GetCursorScreenPos();
        const std::string name = "bar " + std::to_string(row.bar);
        ImGui::InvisibleButton(name.c_str(), {width, scaled(20)});
        if (ImGui::IsItemClicked()) {
            std::vector<model::Index> pieces;
            for (std::size_t i = run.first; i < run.first + run.count; ++i) {
                pieces.push_back(derived.bars[i].piece);
            }
            selection = selection_of(*derived.project, derived.resolved, pieces);
        }
        log_item(name, rest_text(row.offcut, derived.project->shown));
        draw_hint(row.is_offcut ? "An offcut at hand. Click to select its pieces"
                                : "Click to select its pieces");
        draw_bar(*ImGui::GetWindowDrawList(), at, {width, scaled(18)}, derived, run, longest,
                 ", " + rest_text(row.offcut, derived.project->shown));
    }
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
    draw_text_right(is_used(derived, index) ? bars_text(derived, stock.section) : "not used");
    auto change = draw_offers(derived, stock, typing);
    draw_bars_of(derived, stock.section, selection);
    ImGui::Dummy(scaled(1, 6));
    return change;
}

void draw_fasteners(const Derived& derived) {
    draw_text("Fasteners and pins", Type::strong);
    if (derived.fasteners.empty()) {
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
    for (const auto& row : derived.fasteners) {
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

// What is left once both mill ends are squared off must be something to cut from.
std::optional<engine::Error> too_short(const Derived& derived,
                                       const std::string& text,
                                       engine::Length length) {
    const auto refusal = [](std::string message) {
        return engine::Error{engine::ErrorCode::invalid_value, {}, std::move(message)};
    };
    if (length <= engine::Length{}) {
        return refusal("a bar is longer than nothing; `" + text + "` is not");
    }
    const auto trim = engine::Length::from_nm(derived.resolved.shop.end_trim);
    if (length > trim + trim) return std::nullopt;
    auto style = derived.project->shown;
    style.with_unit = true;
    return refusal("nothing is left of a bar of `" + text + "` once " +
                   engine::tape_text(trim, style) + " is squared off each end");
}

}  // namespace

std::optional<Change> take_typed_offers(OfferTyping& typing, const Derived& derived) {
    if (typing.stock.empty()) return std::nullopt;
    const model::Stock* stock = by_name(derived.project->stock, typing.stock);
    if (stock == nullptr || typing.text == offers_text(*stock)) {
        typing = {};
        return std::nullopt;
    }
    const auto offers = read_offers(derived, *stock, typing.text);
    if (!offers) {
        typing.trouble = error_words(offers.error(), typing.text);
        return std::nullopt;
    }
    auto changed = *stock;
    changed.bars = *offers;
    typing = {};
    return change_of(model::PutStock{changed, changed.name});
}

engine::Result<std::vector<model::BarOffer>> read_offers(const Derived& derived,
                                                         const model::Stock& stock,
                                                         const std::string& text) {
    std::vector<model::BarOffer> offers;
    std::string_view rest = text;
    while (!rest.empty()) {
        const auto end = rest.find(';');
        const std::string length = trimmed(rest.substr(0, end));
        rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 1);
        if (length.empty()) continue;
        const auto value = tried_length(derived, length);
        if (!value) return value.error();
        if (auto short_bar = too_short(derived, length, value->length)) return *short_bar;
        model::BarOffer offer{.length = length};
        for (const auto& known : stock.bars) {
            if (known.length == length) offer = known;
        }
        offers.push_back(offer);
    }
    return offers;
}

std::optional<Change> draw_buy(const Area& area,
                               const Derived& derived,
                               OfferTyping& typing,
                               SawTyping& saw,
                               Selection& selection) {
    const PanelScope panel("Buy", area);
    std::optional<Change> change;
    draw_text("Bars", Type::strong);
    ImGui::SameLine();
    draw_text("longest piece first, onto the first bar with room", Type::small, colour::quiet);
    for (std::size_t i = 0; i < derived.project->stock.size(); ++i) {
        auto one = draw_stock(derived, i, typing, selection);
        if (one) change = std::move(one);
    }
    draw_rule();
    auto of_saw = draw_saw_fields(derived, saw);
    if (of_saw) change = std::move(of_saw);
    draw_rule();
    draw_fasteners(derived);
    return change;
}

}  // namespace editor

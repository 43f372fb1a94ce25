#include "model/buying/price_list_template.h"

#include "model/buying/sheet_layout.h"
#include "model/schedule/sheet.h"
#include "model/schedule/tables.h"

#include <algorithm>

namespace model {
namespace {

using engine::Length;

// How long bars come from the mill where the stock does not say it: 20 ft, or 6 m of metric
// sections. Common practice.
Length usual_bar_length(const Catalogue& catalogue, const std::string& section_id) {
    const auto* section = find_section(catalogue, section_id);
    const bool is_metric = section != nullptr && section->system == MeasureSystem::metric;
    return Length::from_nm(is_metric ? 6'000 * Length::nm_per_mm : 240 * Length::nm_per_inch);
}

void add_bar(PriceList& list, BarPrice bar) {
    const auto is_same = [&](const BarPrice& it) {
        return it.section == bar.section && it.alloy == bar.alloy && it.length == bar.length;
    };
    if (std::ranges::none_of(list.bars, is_same)) list.bars.push_back(std::move(bar));
}

void add_bars(PriceList& list,
              const Project& project,
              const Catalogue& catalogue,
              const Resolved& resolved) {
    std::vector<bool> is_used(project.stock.size());
    for (const auto& piece : resolved.pieces) {
        if (piece.stock < is_used.size()) is_used[piece.stock] = true;
    }
    for (std::size_t i = 0; i < project.stock.size(); ++i) {
        const auto& stock = project.stock[i];
        // What the catalogue does not know cannot be read back; it has a finding of its own.
        if (!is_used[i] || find_section(catalogue, stock.section) == nullptr ||
            find_alloy(catalogue, stock.alloy) == nullptr) {
            continue;
        }
        BarPrice bar{.section = stock.section, .alloy = stock.alloy, .length = {}, .note = ""};
        for (const auto& offer : bar_supply(project, resolved, stock).offers) {
            bar.length = Length::from_nm(offer.length);
            add_bar(list, bar);
        }
        bar.length = usual_bar_length(catalogue, stock.section);
        const auto is_listed = [&](const BarPrice& it) {
            return it.section == bar.section && it.alloy == bar.alloy;
        };
        if (std::ranges::none_of(list.bars, is_listed)) list.bars.push_back(bar);
    }
}

void add_sheets(PriceList& list,
                const Project& project,
                const Catalogue& catalogue,
                const Resolved& resolved) {
    for (const auto& row : sheet_rows(project, catalogue, resolved)) {
        const bool is_known = sheet_density_kg_m3(catalogue, row.material).has_value();
        const auto is_same = [&](const SheetPrice& it) {
            return it.material == row.material && it.thickness == row.thickness;
        };
        if (!is_known || std::ranges::any_of(list.sheets, is_same)) continue;
        list.sheets.push_back({.material = row.material,
                               .thickness = row.thickness,
                               .size = usual_sheet_size(project.shown),
                               .note = ""});
    }
}

}  // namespace

PriceList needed_goods(const Project& project,
                       const Catalogue& catalogue,
                       const Resolved& resolved) {
    constexpr int usual_box = 100;
    PriceList list;
    list.terms.currency = project.shop.currency;
    add_bars(list, project, catalogue, resolved);
    add_sheets(list, project, catalogue, resolved);
    for (const auto& row : fastener_rows(project, catalogue, resolved)) {
        // Pins are taken out again, have no spares and are bought one by one.
        const bool is_pin = row.fastener.rfind("sheet pin", 0) == 0;
        list.boxes.push_back(
            {.fastener = row.fastener, .count = is_pin ? 1 : usual_box, .note = ""});
    }
    return list;
}

std::string price_list_template(const Project& project,
                                const Catalogue& catalogue,
                                const Resolved& resolved) {
    return price_list_text(needed_goods(project, catalogue, resolved), project.shown);
}

}  // namespace model

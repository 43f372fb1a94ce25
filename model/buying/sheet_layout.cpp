#include "model/buying/sheet_layout.h"

#include "model/buying/known_goods.h"
#include "model/schedule/sheet.h"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

namespace model {
namespace {

using engine::Length;

constexpr int no_limit = std::numeric_limits<int>::max();

struct SheetGroup {
    std::string material;
    Length thickness;
    std::vector<Index> rows;  // one entry for each part
    std::vector<std::array<Nm, 2>> sizes;
};

std::vector<SheetGroup> groups_of(const std::vector<SheetRow>& rows) {
    std::vector<SheetGroup> groups;
    for (Index i = 0; i < rows.size(); ++i) {
        const auto& row = rows[i];
        if (row.material.empty()) continue;
        auto group = std::ranges::find_if(groups, [&](const SheetGroup& it) {
            return it.material == row.material && it.thickness == row.thickness;
        });
        if (group == groups.end()) {
            groups.push_back({row.material, row.thickness, {}, {}});
            group = groups.end() - 1;
        }
        const auto count = static_cast<std::size_t>(std::max(row.quantity, 0));
        group->rows.insert(group->rows.end(), count, i);
        group->sizes.insert(group->sizes.end(), count, {row.width.nm(), row.length.nm()});
    }
    return groups;
}

struct OfferedSheets {
    std::vector<SheetOffer> offers;
    bool is_assumed = false;
};

std::vector<SheetOffer> paid_offers(const SheetGroup& group, const std::vector<PaidSheet>& paid) {
    std::vector<SheetOffer> offers;
    for (const auto& sheet : paid) {
        if (sheet.size[0] != group.thickness) continue;
        for (const bool has_grain : {false, true}) {
            if (sheet.what != sheet_goods(group.material, has_grain).name) continue;
            offers.push_back({.size = {sheet.size[1].nm(), sheet.size[2].nm()},
                              .price = std::nullopt,
                              .left = sheet.count,
                              .may_turn = !has_grain,
                              .is_paid = true});
        }
    }
    return offers;
}

std::vector<SheetOffer> sold_offers(const SheetGroup& group, const PriceList* prices) {
    std::vector<SheetOffer> offers;
    if (prices == nullptr) return offers;
    for (const auto& sheet : prices->sheets) {
        if (sheet.material != group.material || sheet.thickness != group.thickness) continue;
        offers.push_back({.size = {sheet.size[0].nm(), sheet.size[1].nm()},
                          .price = sheet.price,
                          .left = sheet.limit.value_or(no_limit),
                          .may_turn = !sheet.has_grain});
    }
    return offers;
}

OfferedSheets sheets_for(const SheetGroup& group,
                         const PriceList* prices,
                         const std::vector<PaidSheet>& paid,
                         const engine::TapeStyle& shown) {
    OfferedSheets sheets{.offers = sold_offers(group, prices)};
    if (sheets.offers.empty()) {
        const auto usual = usual_sheet_size(shown);
        sheets.is_assumed = true;
        sheets.offers.push_back(
            {.size = {usual[0].nm(), usual[1].nm()}, .price = std::nullopt, .left = no_limit});
    }
    const auto there = paid_offers(group, paid);
    sheets.offers.insert(sheets.offers.begin(), there.begin(), there.end());
    return sheets;
}

LaidSheet laid_sheet(const PackedSheet& packed, const PackingTask& task, const SheetGroup& group) {
    const auto& offer = task.sheets[packed.offer];
    LaidSheet sheet{.size = offer.size,
                    .price = offer.price,
                    .has_grain = !offer.may_turn,
                    .is_paid = offer.is_paid,
                    .parts = {}};
    for (const auto& part : packed.parts) {
        auto size = task.parts[part.part];
        if (part.is_turned) std::swap(size[0], size[1]);
        sheet.parts.push_back({.row = group.rows[part.part],
                               .at = part.at,
                               .size = size,
                               .is_turned = part.is_turned});
    }
    return sheet;
}

double used_part(const std::vector<LaidSheet>& sheets) {
    const auto area = [](const std::array<Nm, 2>& size) {
        return static_cast<double>(size[0]) * static_cast<double>(size[1]);
    };
    double parts = 0.0;
    double whole = 0.0;
    for (const auto& sheet : sheets) {
        whole += area(sheet.size);
        for (const auto& part : sheet.parts) parts += area(part.size);
    }
    return whole > 0.0 ? parts / whole : 0.0;
}

SheetPlan plan_of(const SheetGroup& group, OfferedSheets sheets, Nm kerf) {
    const PackingTask task{.parts = group.sizes, .sheets = std::move(sheets.offers), .kerf = kerf};
    const auto packing = packing_of(task);
    SheetPlan plan{.material = group.material,
                   .thickness = group.thickness,
                   .is_size_assumed = sheets.is_assumed,
                   .sheets = {},
                   .too_large = {},
                   .left_out = {}};
    for (const auto& sheet : packing.sheets) plan.sheets.push_back(laid_sheet(sheet, task, group));
    for (const auto part : packing.too_large) plan.too_large.push_back(group.rows[part]);
    for (const auto part : packing.left_out) plan.left_out.push_back(group.rows[part]);
    plan.used = used_part(plan.sheets);
    return plan;
}

}  // namespace

std::array<Length, 2> usual_sheet_size(const engine::TapeStyle& shown) {
    const auto unit = engine::bare_unit(shown);
    if (unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot) {
        return {Length::from_nm(48 * Length::nm_per_inch),
                Length::from_nm(96 * Length::nm_per_inch)};
    }
    return {Length::from_nm(1'250 * Length::nm_per_mm), Length::from_nm(2'500 * Length::nm_per_mm)};
}

std::vector<SheetPlan> sheet_plans(const Project& project,
                                   const Catalogue& catalogue,
                                   const Resolved& resolved,
                                   const PriceList* prices,
                                   const std::vector<PaidSheet>& paid) {
    std::vector<SheetPlan> plans;
    for (const auto& group : groups_of(sheet_rows(project, catalogue, resolved))) {
        plans.push_back(
            plan_of(group, sheets_for(group, prices, paid, project.shown), resolved.shop.kerf));
    }
    return plans;
}

}  // namespace model

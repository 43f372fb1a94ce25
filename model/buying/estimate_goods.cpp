// Sheets and boxes of an estimate, less those that were paid for.
#include "model/buying/boxes.h"
#include "model/buying/counts.h"
#include "model/buying/estimate_lines.h"
#include "model/buying/known_goods.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/sheet.h"

#include <algorithm>

namespace model {
namespace {

using engine::Length;

std::string bar_words(Nm length, const engine::TapeStyle& shown) {
    return bar_length_text(Length::from_nm(length), shown);
}

std::string sheet_size_words(const std::array<Nm, 2>& size,
                             Length thickness,
                             const engine::TapeStyle& shown) {
    return bar_words(thickness.nm(), shown) + " x " + bar_words(size[0], shown) + " x " +
           bar_words(size[1], shown);
}

EstimateLine sheet_line(const SheetPlan& plan, const LaidSheet& sheet, const Project& project) {
    return {.kind = BuyKind::sheet,
            .what = sheet_goods(plan.material, sheet.has_grain).name,
            .size = sheet_size_words(sheet.size, plan.thickness, project.shown),
            .count = 0,
            .each = sheet.price,
            .sum = std::nullopt,
            .note = plan.is_size_assumed ? "size assumed" : ""};
}

double sheet_kg(const SheetPlan& plan, const LaidSheet& sheet, const Catalogue& catalogue) {
    constexpr double mm3_per_m3 = 1.0e9;
    return Length::from_nm(sheet.size[0]).mm() * Length::from_nm(sheet.size[1]).mm() *
           plan.thickness.mm() / mm3_per_m3 *
           sheet_density_kg_m3(catalogue, plan.material).value_or(0.0);
}

void add_sheets_of(Estimate& estimate,
                   const Project& project,
                   const Catalogue& catalogue,
                   const SheetPlan& plan) {
    std::vector<EstimateLine> lines;
    for (const auto& sheet : plan.sheets) {
        if (sheet.is_paid) continue;
        const auto line = sheet_line(plan, sheet, project);
        auto same = std::ranges::find_if(lines, [&](const EstimateLine& it) {
            return it.what == line.what && it.size == line.size && it.each == line.each;
        });
        if (same == lines.end()) {
            lines.push_back(line);
            same = lines.end() - 1;
        }
        ++same->count;
        estimate.bought_kg += sheet_kg(plan, sheet, catalogue);
    }
    const auto thing =
        "sheet " + plan.material + " " + bar_words(plan.thickness.nm(), project.shown);
    for (auto& line : lines) add_line(estimate, std::move(line), thing);
    const auto homeless = plan.too_large.size() + plan.left_out.size();
    if (homeless > 0) {
        estimate.without.push_back(counted(homeless, "part", "parts") + " of " + thing +
                                   std::string(that_no_sheet_holds));
    }
}

// How many of a fastener were paid for, whatever their boxes.
std::int64_t paid_of(const Estimate& estimate, const std::string& fastener) {
    std::int64_t count = 0;
    for (const auto& purchase : estimate.paid) {
        for (const auto& line : purchase.lines) {
            if (line.kind != BuyKind::fastener || line.what != fastener) continue;
            count += std::int64_t{line.count} * box_count(line.size).value_or(1);
        }
    }
    return count;
}

// What is there serves first; only what is over is a spare.
void take_off_paid(const Estimate& estimate, std::vector<FastenerRow>& needed) {
    for (auto& row : needed) {
        auto there = std::min<std::int64_t>(paid_of(estimate, row.fastener),
                                            std::int64_t{row.needed} + row.spares);
        const auto used = static_cast<int>(std::min<std::int64_t>(there, row.needed));
        row.needed -= used;
        row.spares -= static_cast<int>(there) - used;
    }
    std::erase_if(needed, [](const FastenerRow& row) { return row.needed + row.spares <= 0; });
}

EstimateLine box_line(const BoxChoice& choice, const BoxesOf& boxes) {
    return {.kind = BuyKind::fastener,
            .what = choice.fastener,
            .size = boxes.in_one == 1 ? "" : "box of " + std::to_string(boxes.in_one),
            .count = boxes.boxes,
            .each = boxes.price,
            .sum = std::nullopt,
            .note = ""};
}

}  // namespace

void add_sheet_lines(Estimate& estimate,
                     const Project& project,
                     const Catalogue& catalogue,
                     const std::vector<SheetPlan>& plans) {
    for (const auto& plan : plans) add_sheets_of(estimate, project, catalogue, plan);
}

void add_box_lines(Estimate& estimate, std::vector<FastenerRow> needed, const PriceList* prices) {
    take_off_paid(estimate, needed);
    for (const auto& choice : box_choices(needed, prices)) {
        for (const auto& boxes : choice.bought) {
            auto line = box_line(choice, boxes);
            const bool is_last = &boxes == &choice.bought.back();
            if (is_last && choice.over > 0) line.note = std::to_string(choice.over) + " over";
            add_line(estimate, std::move(line), choice.fastener);
        }
        if (choice.missing == 0) continue;
        add_line(estimate, box_line(choice, {1, std::nullopt, choice.missing}), choice.fastener);
    }
}

}  // namespace model

#include "engine/files/csv.h"
#include "model/buying/known_goods.h"
#include "model/buying/money.h"
#include "model/buying/price_list.h"
#include "model/buying/price_terms.h"
#include "model/catalogue/near_name.h"
#include "model/schedule/length_texts.h"

#include <charconv>
#include <utility>

namespace model {
namespace {

std::string price_text(const std::optional<Cents>& price) {
    return price ? money_text(*price) : std::string{};
}

std::string limit_text(const std::optional<int>& limit) {
    return limit ? std::to_string(*limit) : std::string{};
}

// "8.25": as many decimals as it has, four at the most.
std::string percent_text(double percent) {
    std::array<char, 32> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), percent).ptr;
    return {buffer.data(), end};
}

void append_terms(engine::CsvText& text, const PriceTerms& terms, const engine::TapeStyle& shown) {
    for (const auto& row : term_rows) {
        std::string size;
        std::string price;
        std::string limit;
        if (row.length != nullptr) {
            if (terms.*row.length) size = bar_length_text(*(terms.*row.length), shown);
        } else if (row.money != nullptr) {
            price = price_text(terms.*row.money);
        } else if (row.count != nullptr) {
            if (terms.*row.count > 0) limit = std::to_string(terms.*row.count);
        } else if (row.name == "currency") {
            price = terms.currency;
        } else if (terms.tax_percent) {
            price = percent_text(*terms.tax_percent);
        }
        text.row({row.name, size, price, "", limit, row.note});
    }
}

}  // namespace

const TermRow* find_term(std::string_view name) {
    const auto wanted = compact_name(name);
    for (const auto& row : term_rows) {
        if (compact_name(row.name) == wanted) return &row;
    }
    return nullptr;
}

std::string price_list_text(const PriceList& list, const engine::TapeStyle& shown) {
    // As the window and all paper show them: in whole feet where they are.
    const auto length = [&](engine::Length it) { return bar_length_text(it, shown); };
    engine::CsvText text{"what", "size", "price", "per", "limit", "note"};
    text.row(
        {"# Prices of one supplier: fill in the column price as in 33.50; leave it empty where "
         "you do not know it. Rows that begin with # are not read.",
         "", "", "", "", ""});
    append_terms(text, list.terms, shown);
    for (const auto& bar : list.bars) {
        text.row({bar_goods(bar.section, bar.alloy).name, length(bar.length), price_text(bar.price),
                  "bar", limit_text(bar.limit), bar.note});
    }
    for (const auto& sheet : list.sheets) {
        text.row({sheet_goods(sheet.material, sheet.has_grain).name,
                  length(sheet.thickness) + " x " + length(sheet.size[0]) + " x " +
                      length(sheet.size[1]),
                  price_text(sheet.price), "sheet", limit_text(sheet.limit), sheet.note});
    }
    for (const auto& box : list.boxes) {
        text.row({box.fastener, "", price_text(box.price),
                  box.count == 1 ? "each" : "box of " + std::to_string(box.count),
                  limit_text(box.limit), box.note});
    }
    return std::move(text).take();
}

}  // namespace model

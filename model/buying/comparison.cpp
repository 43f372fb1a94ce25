#include "model/buying/comparison.h"

#include "model/buying/estimate_lines.h"
#include "model/buying/money.h"
#include "model/buying/supply_from.h"
#include "model/schedule/weight.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

engine::Error list_error(const PriceLibrary& library, const Supplier& supplier) {
    const auto at = library.lists.find(supplier.prices);
    if (at != library.lists.end()) return at->second.error();
    return {.code = engine::ErrorCode::unknown_name,
            .where = supplier.prices,
            .message = "the price list is not read yet"};
}

// Why the list of the chosen supplier serves nothing, with the place in it, and what is done so
// long.
ListNotRead chosen_not_read(const Project& project, const PriceLibrary& library) {
    const auto& name = project.shop.supplier;
    const auto supplier = std::ranges::find(project.suppliers, name, &Supplier::name);
    engine::Error error{.code = engine::ErrorCode::unknown_name,
                        .where = name,
                        .message = "the project knows no such supplier"};
    if (supplier != project.suppliers.end()) error = list_error(library, *supplier);
    error.message += "; until the prices of " + name +
                     ", from whom is bought, can be read again, or another one is chosen, bars are "
                     "planned in the lengths that the project states, without prices";
    const bool is_within = error.code == engine::ErrorCode::bad_file;
    return {.error = std::move(error), .is_within = is_within};
}

// The sum of one kind; empty where nothing of it is bought.
std::string sum_text(const Estimate& estimate, BuyKind kind) {
    Cents sum = 0;
    bool is_there = false;
    bool lacks_price = false;
    for (const auto& line : estimate.lines) {
        if (line.kind != kind) continue;
        is_there = true;
        sum += line.sum.value_or(0);
        lacks_price = lacks_price || !line.sum;
    }
    if (!is_there) return "";
    if (lacks_price && sum == 0) return "no price";
    return money_text(sum) + (lacks_price ? "+" : "");
}

std::string bar_count_text(const Estimate& estimate) {
    int bars = 0;
    for (const auto& line : estimate.lines) {
        if (line.kind == BuyKind::bar) bars += line.count;
    }
    return std::to_string(bars);
}

std::string total_text(const Estimate& estimate) {
    if (!has_total(estimate)) return "no price";
    return money_text(estimate.total) + (estimate.without.empty() ? "" : "+");
}

template <class Cell>
ComparisonRow comparison_row(const std::string& what,
                             const std::vector<Offering>& offerings,
                             const Cell& cell) {
    ComparisonRow row{what, {}};
    for (const auto& it : offerings)
        row.cells.push_back(it.estimate ? cell(*it.estimate) : std::string{});
    return row;
}

// Goods that have no price, and how many of them.
struct Lacking {
    std::string what;
    std::string size;
    int count = 0;

    bool operator==(const Lacking&) const = default;
};

// Which all of those that need a price could have: nothing in an estimate where the price of a bar
// or of the delivery lacks, or anything for which no bar or sheet can be had.
std::optional<std::vector<Lacking>> goods_lacking(const Estimate& estimate) {
    const auto is_homeless = [](const std::string& lacking) {
        return lacking.ends_with(that_no_bar_holds) || lacking.ends_with(that_no_sheet_holds);
    };
    if (std::ranges::any_of(estimate.without, is_homeless)) return std::nullopt;
    std::vector<Lacking> goods;
    for (const auto& line : estimate.lines) {
        if (line.sum) continue;
        if (line.kind == BuyKind::bar || line.kind == BuyKind::delivery) return std::nullopt;
        goods.push_back({line.what, line.size, line.count});
    }
    return goods;
}

// Whether all that can be asked lack the same goods in the same number, and some: what those cost
// nobody tells, and it is the same for all.
bool lacked_by_all(const std::vector<Offering>& offerings) {
    std::optional<std::vector<Lacking>> same;
    for (const auto& it : offerings) {
        if (!it.estimate) continue;
        auto goods = goods_lacking(*it.estimate);
        if (!goods || goods->empty() || (same && *same != *goods)) return false;
        same = std::move(goods);
    }
    return same.has_value();
}

// The same of all: whose goods they are does not tell what is there.
std::string weight_head(const std::vector<Offering>& offerings) {
    const auto known = std::ranges::find_if(
        offerings, [](const Offering& it) { return static_cast<bool>(it.estimate); });
    return "weight " +
           std::string(bought_word(known == offerings.end() ? Estimate{} : *known->estimate));
}

bool is_empty(const ComparisonRow& row) {
    return std::ranges::all_of(row.cells, [](const std::string& cell) { return cell.empty(); });
}

}  // namespace

std::function<BarSupply(const Stock&)> supply_of(const Project& project,
                                                 const Resolved& resolved,
                                                 const BuyFrom& from) {
    if (from.supplier == nullptr) return {};
    return [&project, &resolved, from](const Stock& stock) {
        return supply_from(*from.prices, *from.supplier, project, resolved, stock);
    };
}

BuyFrom chosen_supplier(const Project& project, const PriceLibrary& library) {
    for (const auto& supplier : project.suppliers) {
        if (supplier.name != project.shop.supplier) continue;
        const auto* prices = prices_of(library, supplier);
        if (prices != nullptr) return {&supplier, prices, library.purchases()};
    }
    return {.bought = library.purchases()};
}

std::function<BarSupply(const Stock&)> chosen_supply(const Project& project,
                                                     const Resolved& resolved,
                                                     const PriceLibrary& library) {
    const auto from = chosen_supplier(project, library);
    if (from.supplier != nullptr || project.shop.supplier.empty())
        return supply_of(project, resolved, from);
    return [&project, &resolved, &library](const Stock& stock) {
        auto supply = bar_supply(project, resolved, stock);
        for (auto& offer : supply.offers) offer.price.reset();
        supply.list_not_read = chosen_not_read(project, library);
        return supply;
    };
}

std::vector<Offering> comparison(const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved,
                                 const PriceLibrary& library,
                                 const std::function<bool()>& go_on,
                                 const std::vector<FastenerRow>* fasteners) {
    const auto needed =
        fasteners == nullptr ? needed_fasteners(project, catalogue, resolved) : *fasteners;
    const auto offering = [&](std::string name, Index supplier, const BuyFrom& from) {
        auto plans = bar_plans(project, catalogue, resolved,
                               {.supply = supply_of(project, resolved, from), .go_on = go_on});
        auto estimate = estimate_of(project, catalogue, resolved, plans, from, &needed);
        return Offering{std::move(name), supplier, std::move(plans), std::move(estimate), false};
    };
    std::vector<Offering> offerings{
        offering("as stated", no_index, {.bought = library.purchases()})};
    offerings[0].is_chosen = project.shop.supplier.empty();
    for (Index i = 0; i < project.suppliers.size(); ++i) {
        const auto& supplier = project.suppliers[i];
        if (const auto* prices = prices_of(library, supplier)) {
            offerings.push_back(
                offering(supplier.name, i, {&supplier, prices, library.purchases()}));
            offerings.back().not_used = rows_not_used(*prices, supplier, project, resolved);
        } else {
            offerings.push_back({supplier.name, i, {}, list_error(library, supplier), false});
        }
        offerings.back().is_chosen = supplier.name == project.shop.supplier;
    }
    return offerings;
}

std::vector<ComparisonRow> comparison_rows(const std::vector<Offering>& offerings,
                                           const engine::TapeStyle& shown) {
    const auto row = [&](const std::string& what, const auto& cell) {
        return comparison_row(what, offerings, cell);
    };
    const auto sums_of = [&](const std::string& what, BuyKind kind) {
        return row(what, [&](const Estimate& it) { return sum_text(it, kind); });
    };
    std::vector<ComparisonRow> rows{
        row("bars to buy", bar_count_text),
        sums_of("bars", BuyKind::bar),
        sums_of("cutting in half", BuyKind::cutting),
        sums_of("sheets", BuyKind::sheet),
        sums_of("fasteners", BuyKind::fastener),
        sums_of("delivery", BuyKind::delivery),
        row("tax", [](const Estimate& it) { return it.tax == 0 ? "" : money_text(it.tax); }),
        row("total", total_text),
        row("currency", [](const Estimate& it) { return it.currency; }),
        row(weight_head(offerings),
            [&](const Estimate& it) { return weight_text(it.bought_kg, shown); })};
    std::erase_if(rows, is_empty);
    return rows;
}

std::optional<std::size_t> cheapest_of(const std::vector<Offering>& offerings) {
    const auto lacking = lacked_by_all(offerings);
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < offerings.size(); ++i) {
        const auto& estimate = offerings[i].estimate;
        if (!estimate || !has_total(*estimate) || (!estimate->without.empty() && !lacking))
            continue;
        if (best && offerings[*best].estimate->currency != estimate->currency) return std::nullopt;
        if (!best || estimate->total < offerings[*best].estimate->total) best = i;
    }
    return best;
}

}  // namespace model

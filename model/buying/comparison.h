// What the project costs at each supplier, and what each length of bar is worth.
#pragma once

#include "model/buying/estimate.h"
#include "model/buying/price_library.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace model {

// Where bars come from when a supplier is bought from, or when none is: for PlanWish::supply. The
// arguments must outlive it.
std::function<BarSupply(const Stock&)> supply_of(const Project& project,
                                                 const Resolved& resolved,
                                                 const BuyFrom& from);

// The project's chosen supplier, if its list is read; else neither.
BuyFrom chosen_supplier(const Project& project, const PriceLibrary& library);

// Of the supplier that is chosen; of the project itself where none is. Where the chosen one's list
// cannot be read the bars are those that the project states, without a price, and each supply says
// so.
std::function<BarSupply(const Stock&)> chosen_supply(const Project& project,
                                                     const Resolved& resolved,
                                                     const PriceLibrary& library);

struct Offering {
    std::string name;            // "as stated", or the supplier's
    Index supplier = no_index;   // in Project::suppliers
    std::vector<BarPlan> plans;  // none where the list cannot be read
    engine::Result<Estimate> estimate;

    bool is_chosen = false;                 // Shop::supplier
    std::vector<engine::Error> not_used{};  // rows of its list, with their lines and why
};

// First as the project's stock states its bars, then each supplier. `go_on` is that of PlanWish;
// `fasteners` as those of estimate_of.
std::vector<Offering> comparison(const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved,
                                 const PriceLibrary& library,
                                 const std::function<bool()>& go_on = {},
                                 const std::vector<FastenerRow>* fasteners = nullptr);

// A row of the table in which they stand side by side; a cell for each of them, empty where there
// is nothing of the kind. A sum that lacks prices ends with "+".
struct ComparisonRow {
    std::string what;  // "bars", "total"
    std::vector<std::string> cells;

    bool operator==(const ComparisonRow&) const = default;
};

std::vector<ComparisonRow> comparison_rows(const std::vector<Offering>& offerings,
                                           const engine::TapeStyle& shown);

// The one with the least total of those that lack nothing, or of all where all lack the same; none
// where there is none, or where they are not all in one currency.
std::optional<std::size_t> cheapest_of(const std::vector<Offering>& offerings);

}  // namespace model

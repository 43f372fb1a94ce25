// What a project costs and weighs, line by line: bars, cutting, sheets, boxes, delivery, tax.
#pragma once

#include "model/buying/buy_kind.h"
#include "model/buying/price_list.h"
#include "model/buying/purchases.h"
#include "model/resolve/resolved.h"
#include "model/schedule/bar_plan.h"
#include "model/schedule/tables.h"

#include <string>
#include <string_view>
#include <vector>

namespace model {

struct EstimateLine {
    BuyKind kind = BuyKind::bar;
    std::string what;  // "angle 1 x 1 x 1/8 6063-T52"
    std::string size;  // "20 ft", "1/8 x 48 x 96 in", "box of 100"; empty where there is none
    int count = 0;
    std::optional<Cents> each;
    std::optional<Cents> sum;  // none where the price is not known
    std::string note;          // "270 over", "size assumed"
    int free = 0;              // of cuts: how many more cost nothing

    bool operator==(const EstimateLine&) const = default;
};

// What is still to buy; what was paid stands apart from it.
struct Estimate {
    std::string from;  // the supplier; empty: by the prices that the project's stock states
    std::string currency;
    std::vector<EstimateLine> lines;
    int free_cuts = 0;  // in each order, as the seller says
    Cents sum = 0;      // of all lines that have a price, delivery included
    double tax_percent = 0.0;
    Cents tax = 0;
    Cents total = 0;
    std::vector<std::string> without;  // what the total lacks, since it has no price or is not sold
    // Whole bars and sheets; and the pieces that are made of them, see weight.h. What is at home
    // already is not bought. Neither counts fasteners, which the catalogue does not weigh, nor
    // sheet of which it does not know the density.
    double bought_kg = 0.0;
    double built_kg = 0.0;
    std::vector<Purchase> paid;  // whose bars are there; its sheets and boxes are not bought again
    bool is_rest = false;  // something was paid, or bars are there: this is what is left to buy

    bool operator==(const Estimate&) const = default;
};

// From whom: both or neither. Neither: bars at the prices that their stock states, and delivery as
// the shop says.
struct BuyFrom {
    const Supplier* supplier = nullptr;
    const PriceList* prices = nullptr;
    const Purchases* bought = nullptr;  // before; null: nothing
};

// The list's own, where it names none the shop's.
const std::string& currency_of(const Project& project, const BuyFrom& from);

// Over all frames. The plans are those of the same supply. Of bars cut in half one buys whole ones:
// of an odd half the other one is left over. Prices are whole hundredths of the currency and are
// never rounded; tax is reckoned once, on the sum with delivery, and rounded to the nearest
// hundredth, halves up. Its percentage is the list's, where that states none the shop's. Delivery
// is paid once, by whoever delivers, where a bar or anything with a price is still to buy. What was
// bought before of sheets and boxes, from whomever, is taken off. `fasteners` are those that are
// needed, where they are known: see needed_fasteners.
Estimate estimate_of(const Project& project,
                     const Catalogue& catalogue,
                     const Resolved& resolved,
                     const std::vector<BarPlan>& plans,
                     const BuyFrom& from,
                     const std::vector<FastenerRow>* fasteners = nullptr);

// With as many pins as the assembly order needs at once.
std::vector<FastenerRow> needed_fasteners(const Project& project,
                                          const Catalogue& catalogue,
                                          const Resolved& resolved);

// Whether the total says anything: some goods have a price, something costs more than nothing, or
// nothing is to be bought, which costs 0.00. What nobody knows is no 0.00, though its cuts or its
// delivery are free.
bool has_total(const Estimate& estimate);

// What the goods of an estimate are: "bought", and "still to buy" where they are not all that is.
std::string_view bought_word(const Estimate& estimate);

// "412.35 USD", and what it lacks: "412.35 USD without sheet 5052-H32 and delivery"; of more than
// three things how many. "no price is known yet of delivery" where it has no total.
std::string total_in_words(const Estimate& estimate);

}  // namespace model

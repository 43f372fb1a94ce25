// Money as people type it into spreadsheets, and as our own files show it.
#pragma once

#include "engine/result.h"
#include "model/resolve/bar_supply.h"

#include <string>
#include <string_view>

namespace model {

// More than anything for a van costs; keeps every later sum far from overflow.
inline constexpr Cents most_cents = 100'000'000'000;

struct ReadMoney {
    Cents cents = 0;
    std::string sign;  // "EUR", "$"; empty where none stands beside it

    bool operator==(const ReadMoney&) const = default;
};

// "33.50", "33,50", "$ 33.50", "33.50 EUR", "1,234.50", "1.234,50", "1 234,50", "1'234.50", "12".
// What could be meant in two ways is refused: "1.234" may be a thousand or a little more than one.
// So is what is less than nothing, or finer than a hundredth. Error: invalid_text or out_of_range,
// with the mend and without a place.
engine::Result<ReadMoney> read_money(std::string_view text);

// "8.25", "8,25 %": at least 0, less than 1000, with four decimals at the most.
engine::Result<double> read_percent(std::string_view text);

// A plain decimal number: "33.50", "-0.05".
std::string money_text(Cents cents);

// The share of a sum in hundredths of the currency, halves away from zero. A percentage counts with
// four decimals.
Cents share_of(Cents sum, double percent);

}  // namespace model

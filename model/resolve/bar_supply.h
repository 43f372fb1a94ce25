// The bars and offcuts of a stock, as lengths.
#pragma once

#include "engine/result.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace model {

// Money in hundredths of the currency.
using Cents = std::int64_t;

struct OfferedBar {
    Nm length = 0;
    int left = 0;                // how many can be had
    std::optional<Cents> price;  // of one, cutting in half included; none where it is not stated
    Nm halved_from = 0;          // of a bar that the supplier cuts in half: its whole length
    // Of such a bar: what the whole of it costs with its cut. `price` is half of that, rounded up.
    std::optional<Cents> halved_price{};
};

// The list of the chosen seller serves nothing.
struct ListNotRead {
    engine::Error error;
    bool is_within = false;  // the list is there; something in it cannot be read
};

struct BarSupply {
    std::vector<OfferedBar> offers;      // longest first
    std::vector<Nm> at_home;             // whole bars that are paid for; longest first
    std::vector<Nm> offcuts;             // shortest first, one entry each
    std::vector<engine::Error> refused;  // lengths that cannot be used, and why
    std::optional<ListNotRead> list_not_read;
    std::vector<engine::Error> not_home;  // bars that are listed but not counted on, and why
    // Of the bars that the supplier cuts in half so many are cut for nothing; the others at that
    // fee, which is in their price.
    int free_cuts = 0;
    Cents cut_fee = 0;
};

// A price as typed: "31.25" is 3125.
Cents cents_of(double money);

// Of a bar, an offcut or a piece that was cut. Errors: those of the formula; invalid_value where it
// is not more than zero.
engine::Result<Nm> stated_length(const Project& project,
                                 const Resolved& resolved,
                                 const Formula& formula);

BarSupply bar_supply(const Project& project, const Resolved& resolved, const Stock& stock);

}  // namespace model

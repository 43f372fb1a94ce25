// The rows of a price list that name no goods.
#pragma once

#include "model/buying/price_list.h"

#include <array>
#include <string_view>

namespace model {

// What a term is; one without a member is the currency or the tax.
struct TermRow {
    std::string_view name;
    std::optional<Cents> PriceTerms::*money = nullptr;
    std::optional<engine::Length> PriceTerms::*length = nullptr;
    int PriceTerms::*count = nullptr;  // stands in the column limit
    std::string_view note{};           // how it is filled in, for a list that is begun
};

inline constexpr std::array<TermRow, 8> term_rows{{
    {"currency", nullptr, nullptr, nullptr, "of all prices here"},
    {"delivery", &PriceTerms::delivery, nullptr, nullptr, "of one order: 0 where it is free"},
    {"tax", nullptr, nullptr, nullptr, "per cent on all of it: 0 where the prices hold it"},
    {"longest brought home", nullptr, &PriceTerms::longest_brought_home, nullptr,
     "in the column size: what you can carry; empty: any"},
    {"longest delivered", nullptr, &PriceTerms::longest_delivered, nullptr,
     "in the column size; empty: any"},
    {"cutting in half", &PriceTerms::cutting_in_half, nullptr, nullptr,
     "of a bar: empty where they do not cut"},
    {"each cut", &PriceTerms::each_cut, nullptr, nullptr, "the same, where any cut costs so much"},
    {"free cuts", nullptr, nullptr, &PriceTerms::free_cuts, "in the column limit: how many"},
}};

// Spaces and capitals do not matter; null where it is no term.
const TermRow* find_term(std::string_view name);

}  // namespace model

// How bars are told: where they come from, and those that their seller cuts in half. A length of
// bar stands in the words as its reader is shown it: "20 ft".
#pragma once

#include "engine/measure/tape.h"
#include "model/schedule/bars_sold.h"

#include <string>
#include <string_view>

namespace model {

// In tables: "buy", "at home", "offcut", "at the saw".
std::string_view name_of(BarFrom from);

// "to buy", "at home", "an offcut", "at the saw".
std::string_view from_words(BarFrom from);

// The same words, of half a bar with what it is half of: "to buy, half of a bar of 20 ft".
// `halved_from` is zero of a bar that stays whole.
std::string with_half(std::string_view from,
                      engine::Length halved_from,
                      const engine::TapeStyle& shown);

// "a half of 20 ft", "3 halves of 20 ft".
std::string halves_counted(int count, const std::string& bar);

// "halves of 20 ft": as they are offered.
std::string halves_offered(const std::string& bar);

// As they are asked for at the counter: "2 x 20 ft in halves".
std::string bars_in_halves(int bars, const std::string& bar);

// "each cut in half by the seller, one half is left over"; empty of bars that stay whole.
std::string halving_note(const BarsSold& sold);

}  // namespace model

#include "model/schedule/bar_words.h"

#include "model/schedule/length_texts.h"

namespace model {

std::string_view name_of(BarFrom from) {
    switch (from) {
        case BarFrom::shop:
            return "buy";
        case BarFrom::home:
            return "at home";
        case BarFrom::offcut:
            return "offcut";
        case BarFrom::saw:
            break;
    }
    return "at the saw";
}

std::string_view from_words(BarFrom from) {
    if (from == BarFrom::shop) return "to buy";
    return from == BarFrom::offcut ? "an offcut" : name_of(from);
}

std::string with_half(std::string_view from,
                      engine::Length halved_from,
                      const engine::TapeStyle& shown) {
    std::string words{from};
    if (halved_from.nm() > 0) words += ", half of a bar of " + bar_length_text(halved_from, shown);
    return words;
}

std::string halves_counted(int count, const std::string& bar) {
    return (count == 1 ? "a half" : std::to_string(count) + " halves") + " of " + bar;
}

std::string halves_offered(const std::string& bar) { return "halves of " + bar; }

std::string bars_in_halves(int bars, const std::string& bar) {
    return std::to_string(bars) + " x " + bar + " in halves";
}

std::string halving_note(const BarsSold& sold) {
    if (!sold.is_halved) return {};
    const std::string note =
        sold.bars() == 1 ? "cut in half by the seller" : "each cut in half by the seller";
    return sold.leaves_half() ? note + ", one half is left over" : note;
}

}  // namespace model

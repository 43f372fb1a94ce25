#include "model/schedule/kept_together.h"

#include <algorithm>
#include <array>

namespace model {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::string_view without_opening(std::string_view word) {
    return word.substr(std::min(word.find_first_not_of("(\"~+-<"), word.size()));
}

std::string_view without_ending(std::string_view word) {
    return word.substr(0, word.find_last_not_of(".,;:)\"") + 1);
}

// Its last word ends a clause: what follows is none of it.
bool is_number(std::string_view word) {
    word = without_opening(word);
    if (word.empty() || !is_digit(word.front()) || !is_digit(word.back())) return false;
    return word.find_first_not_of("0123456789./-") == std::string_view::npos;
}

bool begins_with_digit(std::string_view word) {
    word = without_opening(word);
    return !word.empty() && is_digit(word.front());
}

bool is_fraction(std::string_view word) {
    const auto number = without_ending(word);
    return is_number(number) && is_digit(number.front()) &&
           number.find('/') != std::string_view::npos;
}

bool is_unit(std::string_view word) {
    constexpr std::array<std::string_view, 12> units{"in", "ft", "mm", "cm",  "m",  "m2",
                                                     "kg", "g",  "lb", "lbf", "oz", "N"};
    return std::ranges::find(units, without_ending(word)) != units.end();
}

// "1'" and "6 3/8\"", "4 ft" and "7 in"
bool are_feet(std::string_view word) {
    return word == "ft" || (word.ends_with('\'') && begins_with_digit(word));
}

bool belong_together(std::string_view word, std::string_view next) {
    if (is_number(word)) return is_fraction(next) || is_unit(next);
    return (are_feet(word) || word == "grip") && begins_with_digit(next);
}

}  // namespace

std::vector<std::string_view> words_of(std::string_view text) {
    std::vector<std::string_view> words;
    while (!text.empty()) {
        const auto end = text.find(' ');
        words.push_back(text.substr(0, end));
        text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
    }
    return words;
}

std::vector<std::string_view> kept_together(std::string_view text) {
    std::vector<std::string_view> measures;
    std::string_view last;
    for (const auto word : words_of(text)) {
        if (!measures.empty() && belong_together(last, word)) {
            auto& measure = measures.back();
            measure = {measure.data(), measure.size() + 1 + word.size()};
        } else {
            measures.push_back(word);
        }
        last = word;
    }
    return measures;
}

}  // namespace model

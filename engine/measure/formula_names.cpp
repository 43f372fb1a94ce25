#include "engine/measure/formula_names.h"

#include "engine/measure/formula.h"
#include "engine/measure/literal.h"

#include <array>
#include <unordered_set>
#include <utility>

namespace engine {
namespace {

constexpr std::array<std::pair<std::string_view, Function>, 7> functions{{
    {"min", Function::least},
    {"max", Function::most},
    {"abs", Function::size},
    {"round", Function::nearest_step},
    {"floor", Function::step_below},
    {"ceil", Function::step_above},
    {"if", Function::choice},
}};

bool is_word_character(char32_t c) { return is_letter(c) || is_digit(c) || c == U'_'; }

void pass_word(TextScan& scan) {
    while (is_word_character(scan.next())) scan.step();
}

// A number and its unit, so that the unit is not taken for a name.
void pass_literal(TextScan& scan) {
    while (starts_literal(scan.next())) scan.step();
    const auto behind_number = scan.at();
    scan.skip_spaces();
    const auto begin = scan.at();
    while (is_letter(scan.next())) scan.step();
    const auto word = scan.text().substr(begin, scan.at() - begin);
    if (!is_unit_word(word)) scan.go_to(behind_number);
}

bool is_call(TextScan scan) {
    scan.skip_spaces();
    return scan.next() == U'(';
}

bool is_reserved(std::string_view name) {
    return is_unit_word(name) || function_called(name).has_value();
}

}  // namespace

std::optional<Function> function_called(std::string_view name) {
    for (const auto& [known, function] : functions) {
        if (known == name) return function;
    }
    return std::nullopt;
}

std::string_view take_name(TextScan& scan) {
    const auto begin = scan.at();
    for (;;) {
        pass_word(scan);
        const auto behind_word = scan.at();
        if (!scan.take(U' ') || !is_word_character(scan.next())) {
            scan.go_to(behind_word);
            return scan.text().substr(begin, behind_word - begin);
        }
    }
}

std::optional<std::string_view> next_name(TextScan& scan) {
    while (!scan.is_at_end()) {
        if (starts_literal(scan.next())) {
            pass_literal(scan);
        } else if (!is_letter(scan.next())) {
            scan.step();
        } else {
            const auto name = take_name(scan);
            if (!is_reserved(name) && !is_call(scan)) return name;
        }
    }
    return std::nullopt;
}

std::vector<std::string> names_in(std::string_view formula) {
    TextScan scan{formula};
    std::vector<std::string> names;
    std::unordered_set<std::string_view> seen;
    while (const auto name = next_name(scan)) {
        if (seen.insert(*name).second) names.emplace_back(*name);
    }
    return names;
}

std::string with_name_replaced(std::string_view formula,
                               std::string_view before,
                               std::string_view after) {
    TextScan scan{formula};
    std::string replaced;
    std::size_t copied = 0;
    while (const auto name = next_name(scan)) {
        if (*name != before) continue;
        const auto begin = scan.at() - name->size();
        replaced += formula.substr(copied, begin - copied);
        replaced += after;
        copied = scan.at();
    }
    replaced += formula.substr(copied);
    return replaced;
}

bool is_name(std::string_view text) {
    TextScan scan{text};
    if (!is_letter(scan.next())) return false;
    return take_name(scan) == text && !is_reserved(text);
}

}  // namespace engine

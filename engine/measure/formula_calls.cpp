// The functions of a formula: min, max, abs, round, floor, ceil and if.
#include "engine/measure/formula_reader.h"

#include <array>
#include <string>

namespace engine {
namespace {

enum class Sign { less, at_most, more, at_least, equal, unlike };

struct SignText {
    std::string_view text;
    Sign sign;
};

// The longer of two that begin alike comes first.
constexpr std::array sign_texts{
    SignText{"<=", Sign::at_most},     SignText{">=", Sign::at_least},
    SignText{"==", Sign::equal},       SignText{"!=", Sign::unlike},
    SignText{"<", Sign::less},         SignText{">", Sign::more},
    SignText{"\u2264", Sign::at_most}, SignText{"\u2265", Sign::at_least},
    SignText{"\u2260", Sign::unlike}};

bool holds(Sign sign, int order) {
    switch (sign) {
        case Sign::less:
            return order < 0;
        case Sign::at_most:
            return order <= 0;
        case Sign::more:
            return order > 0;
        case Sign::at_least:
            return order >= 0;
        case Sign::equal:
            return order == 0;
        case Sign::unlike:
            return order != 0;
    }
    return false;
}

std::optional<Sign> take_sign(TextScan& scan) {
    const auto rest = scan.text().substr(scan.at());
    for (const auto& known : sign_texts) {
        if (rest.substr(0, known.text.size()) != known.text) continue;
        scan.go_to(scan.at() + known.text.size());
        return known.sign;
    }
    return std::nullopt;
}

constexpr std::string_view choice_shape = "if(a > b, then, else)";

Rounding rounding_of(Function function) {
    if (function == Function::step_below) return Rounding::down;
    return function == Function::step_above ? Rounding::up : Rounding::nearest;
}

std::optional<Fraction> rounded_to_step(const Fraction& value,
                                        const Fraction& step,
                                        Rounding rounding) {
    const auto steps = quotient(value, step);
    if (!steps) return std::nullopt;
    return product({whole_number(*steps, rounding), 1}, step);
}

}  // namespace

FormulaReader::MaybeTerm FormulaReader::call(std::string_view name, std::size_t begin) {
    const auto function = function_called(name);
    if (!function) {
        return scan_.fail(ErrorCode::unknown_name, begin,
                          "there is no function " + quoted(name) +
                              "; there are min, max, abs, round, floor, ceil and if");
    }
    const auto opened_at = scan_.at();
    if (!goes_deeper()) return std::nullopt;
    scan_.step();
    auto term = arguments(*function, name);
    if (!term) return std::nullopt;
    if (scan_.next() == U',')
        return scan_.fail(ErrorCode::invalid_text, scan_.at(),
                          quoted(name) + " takes no more values than those before this");
    if (!scan_.take(U')'))
        return scan_.fail(ErrorCode::invalid_text, opened_at, "this ( is never closed");
    --depth_;
    term->is_bare = false;
    term->is_joined_by_dash = false;
    return term;
}

FormulaReader::MaybeTerm FormulaReader::arguments(Function function, std::string_view name) {
    switch (function) {
        case Function::least:
        case Function::most:
            return least_or_most(function, name);
        case Function::size:
            return size_of();
        case Function::nearest_step:
        case Function::step_below:
        case Function::step_above:
            return to_step(function, name);
        case Function::choice:
            return choice();
    }
    return std::nullopt;
}

FormulaReader::MaybeTerm FormulaReader::least_or_most(Function function, std::string_view name) {
    auto best = sum_of_products();
    while (best && scan_.take(U',')) {
        const auto next = sum_of_products();
        if (!next || !are_alike(*best, *next, "compared in " + std::string{name}))
            return std::nullopt;
        const auto order = compared(*next, *best);
        if (!order) return std::nullopt;
        const bool is_better = function == Function::least ? *order < 0 : *order > 0;
        if (is_better) best->value = next->value;
    }
    return best;
}

FormulaReader::MaybeTerm FormulaReader::size_of() {
    auto term = sum_of_products();
    if (term && term->value.numerator < 0) term->value = negated(term->value);
    return term;
}

FormulaReader::MaybeTerm FormulaReader::to_step(Function function, std::string_view name) {
    const auto value = sum_of_products();
    if (!value || !take_comma(std::string{name} + "(value, step)")) return std::nullopt;
    const auto step = sum_of_products();
    if (!step || !are_alike(*value, *step, "value and step of " + std::string{name}))
        return std::nullopt;
    if (step->value.numerator <= 0 && !is_skipping_)
        return scan_.fail(ErrorCode::invalid_value, step->begin,
                          "the step " + text_of(*step) + " must be more than zero");
    return computed(*value, *step, value->kind, [&] {
        return rounded_to_step(value->value, step->value, rounding_of(function));
    });
}

FormulaReader::MaybeTerm FormulaReader::choice() {
    const auto is_so = condition();
    if (!is_so || !take_comma(choice_shape)) return std::nullopt;
    const auto then = branch(*is_so);
    if (!then || !take_comma(choice_shape)) return std::nullopt;
    const auto otherwise = branch(!*is_so);
    if (!otherwise || !are_alike(*then, *otherwise, "the two outcomes of one if"))
        return std::nullopt;
    return *is_so ? then : otherwise;
}

// Values in a branch that is not taken do not matter: it may divide by zero.
FormulaReader::MaybeTerm FormulaReader::branch(bool is_taken) {
    const bool was_skipping = is_skipping_;
    is_skipping_ = was_skipping || !is_taken;
    auto term = sum_of_products();
    is_skipping_ = was_skipping;
    return term;
}

std::optional<bool> FormulaReader::condition() {
    const auto left = sum_of_products();
    if (!left) return std::nullopt;
    const auto sign = take_sign(scan_);
    if (!sign) {
        return scan_.fail(
            ErrorCode::invalid_text, scan_.at(),
            "one of < <= > >= == != is needed here, as in " + std::string{choice_shape});
    }
    const auto right = sum_of_products();
    if (!right || !are_alike(*left, *right, "compared")) return std::nullopt;
    const auto order = compared(*left, *right);
    if (!order) return std::nullopt;
    return holds(*sign, *order);
}

// Less than, equal to or more than zero, as a is to b.
std::optional<int> FormulaReader::compared(const Term& a, const Term& b) {
    if (is_skipping_) return 0;
    const auto order = comparison(a.value, b.value);
    if (!order) return fail_out_of_range(b);
    return order;
}

bool FormulaReader::take_comma(std::string_view shape) {
    if (scan_.take(U',')) return true;
    static_cast<void>(scan_.fail(ErrorCode::invalid_text, scan_.at(),
                                 "a comma is needed here, as in " + std::string{shape}));
    return false;
}

}  // namespace engine

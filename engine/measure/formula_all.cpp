// Formulas that refer to one another: each is evaluated after those that it needs.
#include "engine/measure/formula_names.h"
#include "engine/measure/formula_reader.h"
#include "engine/measure/needs.h"

#include <algorithm>
#include <unordered_map>

namespace engine {
namespace {

constexpr std::size_t most_named = 12;  // of one loop, in its error

class FormulaSet {
public:
    FormulaSet(std::span<const NamedFormula> formulas, LengthUnit bare)
        : formulas_{formulas}, bare_{bare} {
        numbers_.reserve(formulas.size());
        for (std::size_t i = 0; i < formulas.size(); ++i) numbers_.emplace(formulas[i].name, i);
        collect_needs();
    }

    std::vector<Result<Quantity>> evaluated() {
        results_.assign(formulas_.size(), Quantity{});
        states_.assign(formulas_.size(), NameState::without_value);
        const auto order = need_order(needs_);
        std::optional<LoopFinder> loops;
        for (const auto i : order.things) {
            if (!order.is_on_loop(needs_, i)) {
                evaluate(i);
                continue;
            }
            if (!loops) loops.emplace(needs_, order);
            results_[i] = loop_error(loops->loop_of(i, most_named + 1), i);
        }
        return std::move(results_);
    }

private:
    void collect_needs() {
        needs_.first.reserve(formulas_.size() + 1);
        for (const auto& formula : formulas_) {
            TextScan scan{formula.formula};
            while (const auto name = next_name(scan)) {
                const auto found = numbers_.find(*name);
                if (found != numbers_.end()) needs_.on.push_back(found->second);
            }
            needs_.close_thing();
        }
    }

    void evaluate(std::size_t i) {
        const auto& formula = formulas_[i];
        results_[i] = FormulaReader{formula.formula, source_}.read(formula.kind, bare_);
        if (results_[i]) states_[i] = NameState::known;
    }

    NameValue value_of(std::string_view name) const {
        const auto found = numbers_.find(name);
        if (found == numbers_.end()) return {};
        const auto state = states_[found->second];
        if (state != NameState::known) return {state, {}};
        return {state, *results_[found->second]};
    }

    // Where the formula refers to what leads round the loop.
    std::size_t place_of(std::string_view formula, std::size_t needed) const {
        TextScan scan{formula};
        while (const auto name = next_name(scan)) {
            const auto found = numbers_.find(*name);
            if (found != numbers_.end() && found->second == needed) return scan.at() - name->size();
        }
        return 0;
    }

    Error loop_error(const std::vector<std::size_t>& loop, std::size_t i) const {
        const auto place = place_of(formulas_[i].formula, loop.size() > 1 ? loop[1] : loop[0]);
        return {ErrorCode::cycle,
                "column " + std::to_string(column_of(formulas_[i].formula, place)),
                loop_text(loop)};
    }

    std::string loop_text(const std::vector<std::size_t>& loop) const {
        std::string text;
        for (std::size_t i = 0; i < std::min(loop.size(), most_named); ++i) {
            text += std::string{formulas_[loop[i]].name} + " needs ";
        }
        if (loop.size() > most_named) text += "... needs ";
        return text + std::string{formulas_[loop.front()].name};
    }

    std::span<const NamedFormula> formulas_;
    LengthUnit bare_;
    std::unordered_map<std::string_view, std::size_t> numbers_;  // of two alike the first serves
    Needs needs_;
    std::vector<Result<Quantity>> results_;
    std::vector<NameState> states_;
    NameSource source_ = [this](std::string_view name) { return value_of(name); };
};

}  // namespace

std::vector<Result<Quantity>> evaluate_all(std::span<const NamedFormula> formulas,
                                           LengthUnit bare) {
    return FormulaSet{formulas, bare}.evaluated();
}

}  // namespace engine

#include "editor/dimension_values.h"

#include "editor/by_name.h"
#include "engine/measure/tape.h"
#include "model/schedule/length_texts.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <vector>

namespace editor {
namespace {

using engine::Quantity;
using engine::QuantityKind;

engine::NameLookup lookup_in(const Derived& derived) {
    return [&derived](std::string_view name) { return value_of(derived, name); };
}

std::string number_text(double value) {
    std::array<char, 32> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                   std::chars_format::fixed, 4)
                         .ptr;
    std::string text(buffer.data(), end);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

bool is_fraction(engine::TapeForm form) {
    return form == engine::TapeForm::inch_fraction || form == engine::TapeForm::feet_inches;
}

engine::Length stepped_length(engine::Length start, double steps, const engine::TapeStyle& shown) {
    const auto step = hand_step(shown).nm();
    const double moved = static_cast<double>(start.nm()) + steps * static_cast<double>(step);
    const double most = 1.0e12;  // a kilometre: beyond any van
    const double kept = std::clamp(moved, -most, most);
    return engine::Length::from_nm(std::llround(kept / static_cast<double>(step)) * step);
}

std::optional<Quantity> limit(const Derived& derived,
                              const model::Dimension& dimension,
                              const std::optional<model::Formula>& formula) {
    if (!formula) return std::nullopt;
    const auto bare = engine::bare_unit(derived.project->shown);
    const auto value = engine::evaluate(*formula, dimension.kind, bare, lookup_in(derived));
    return value ? std::optional(*value) : std::nullopt;
}

std::vector<engine::Result<Quantity>> all_values(const model::Project& project) {
    std::vector<engine::NamedFormula> formulas;
    for (const auto& it : project.dimensions) formulas.push_back({it.name, it.formula, it.kind});
    return engine::evaluate_all(formulas, engine::bare_unit(project.shown));
}

bool is_less(const Quantity& a, const Quantity& b) {
    return a.kind == QuantityKind::length ? a.length < b.length : a.value < b.value;
}

}  // namespace

bool is_metric(const engine::TapeStyle& shown) {
    const auto unit = engine::bare_unit(shown);
    return unit != engine::LengthUnit::inch && unit != engine::LengthUnit::foot;
}

engine::Length hand_step(const engine::TapeStyle& shown) {
    const auto mark = engine::tape_step(shown);
    if (is_fraction(shown.form)) return mark;
    const auto least = engine::Length::from_nm(500'000);
    for (std::int64_t tens = 1;; tens *= 10) {
        for (const std::int64_t times : {1, 2, 5}) {
            if (mark * (times * tens) >= least) return mark * (times * tens);
        }
    }
}

std::optional<Quantity> value_of(const Derived& derived, std::string_view dimension) {
    const auto& dimensions = derived.project->dimensions;
    for (std::size_t i = 0; i < dimensions.size() && i < derived.resolved.dimensions.size(); ++i) {
        const auto& value = derived.resolved.dimensions[i];
        if (dimensions[i].name == dimension && value) return *value;
    }
    return std::nullopt;
}

Limits limits_of(const Derived& derived, const model::Dimension& dimension) {
    return {limit(derived, dimension, dimension.least), limit(derived, dimension, dimension.most)};
}

bool is_plain_value(const model::Project& project, const model::Dimension& dimension) {
    const auto none = [](std::string_view) { return std::optional<Quantity>(); };
    const auto bare = engine::bare_unit(project.shown);
    if (!engine::evaluate(dimension.formula, dimension.kind, bare, none)) return false;
    if (dimension.kind != QuantityKind::length) return true;
    return engine::read_length(dimension.formula, bare).has_value();
}

std::string quantity_text(const Quantity& quantity, const engine::TapeStyle& shown) {
    switch (quantity.kind) {
        case QuantityKind::number:
            return number_text(quantity.value);
        case QuantityKind::angle:
            return number_text(quantity.value) + "\xC2\xB0";
        case QuantityKind::length:
            break;
    }
    return model::shown_text(quantity.length, shown);
}

std::string formula_of(const Quantity& quantity, const engine::TapeStyle& shown) {
    if (quantity.kind != QuantityKind::length) return number_text(quantity.value);
    auto style = shown;
    style.with_unit = false;
    return engine::exact_text(quantity.length, style);
}

Quantity stepped(const Quantity& start,
                 double steps,
                 const Limits& limits,
                 const engine::TapeStyle& shown) {
    Quantity moved = start;
    if (start.kind == QuantityKind::length) {
        moved.length = stepped_length(start.length, steps, shown);
        if (limits.least) moved.length = std::max(moved.length, limits.least->length);
        if (limits.most) moved.length = std::min(moved.length, limits.most->length);
        return moved;
    }
    moved.value = std::round(start.value + steps);
    if (limits.least) moved.value = std::max(moved.value, limits.least->value);
    if (limits.most) moved.value = std::min(moved.value, limits.most->value);
    return moved;
}

engine::Result<Quantity> tried_formula(const model::Project& project,
                                       std::string_view dimension,
                                       const model::Formula& formula) {
    std::vector<engine::NamedFormula> formulas;
    std::size_t tried = project.dimensions.size();
    for (std::size_t i = 0; i < project.dimensions.size(); ++i) {
        const auto& it = project.dimensions[i];
        if (it.name == dimension) tried = i;
        formulas.push_back(
            {it.name, it.name == dimension ? std::string_view(formula) : it.formula, it.kind});
    }
    if (tried == formulas.size()) formulas.push_back({dimension, formula, QuantityKind::length});
    return engine::evaluate_all(formulas, engine::bare_unit(project.shown))[tried];
}

engine::Result<Quantity> tried_limit(const model::Project& project,
                                     QuantityKind kind,
                                     const model::Formula& formula) {
    const auto values = all_values(project);
    const auto look_up = [&](std::string_view name) {
        std::optional<Quantity> found;
        for (std::size_t i = 0; i < values.size() && !found; ++i) {
            if (project.dimensions[i].name == name && values[i]) found = *values[i];
        }
        return found;
    };
    return engine::evaluate(formula, kind, engine::bare_unit(project.shown), look_up);
}

std::optional<std::string> reason_by_limits(const model::Project& project,
                                            std::string_view dimension) {
    const model::Dimension* it = by_name(project.dimensions, dimension);
    if (it == nullptr) return std::nullopt;
    const auto value = tried_formula(project, dimension, it->formula);
    if (!value) return std::nullopt;
    for (const auto* formula : {&it->least, &it->most}) {
        if (!*formula) continue;
        const bool is_least = formula == &it->least;
        const auto limit = tried_limit(project, it->kind, **formula);
        if (!limit || (is_least ? !is_less(*value, *limit) : !is_less(*limit, *value))) continue;
        return quantity_text(*value, project.shown) +
               (is_least ? " is less than its least, " : " is more than its most, ") +
               quantity_text(*limit, project.shown) +
               "; the limits are changed by a click on the dimension's name";
    }
    return std::nullopt;
}

engine::Result<Quantity> tried_length(const Derived& derived, const model::Formula& formula) {
    return engine::evaluate(formula, QuantityKind::length,
                            engine::bare_unit(derived.project->shown), lookup_in(derived));
}

std::string comes_to(const Derived& derived, const model::Formula& formula) {
    if (engine::names_in(formula).empty()) return {};
    const auto value = tried_length(derived, formula);
    return value ? "= " + model::length_in_words(value->length, derived.project->shown)
                 : std::string();
}

}  // namespace editor

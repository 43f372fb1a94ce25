// Showing lengths in another style without changing any.
#include "model/project/change.h"
#include "model/project/check_thing.h"
#include "model/project/walk_texts.h"

#include <optional>

namespace model {

namespace {

using engine::Length;
using engine::LengthUnit;
using engine::QuantityKind;

std::optional<Length> length_without_names(const Formula& formula, LengthUnit bare) {
    const auto no_names = [](std::string_view) { return std::nullopt; };
    const auto value = engine::evaluate(formula, QuantityKind::length, bare, no_names);
    if (!value) return std::nullopt;
    return value->length;
}

std::string_view symbol_of(LengthUnit unit) {
    switch (unit) {
        case LengthUnit::inch:
            return "in";
        case LengthUnit::foot:
            return "ft";
        case LengthUnit::millimetre:
            return "mm";
        case LengthUnit::centimetre:
            return "cm";
        case LengthUnit::metre:
            break;
    }
    return "m";
}

// "36" means 36 in no longer once lengths are shown in millimetres, so it becomes "36 in".
void spell_out_unit(Formula& formula, LengthUnit before, LengthUnit after) {
    const auto length = length_without_names(formula, before);
    if (!length || length == length_without_names(formula, after)) return;
    const Formula with_unit = formula + " " + std::string(symbol_of(before));
    if (length_without_names(with_unit, after) == length) {
        formula = with_unit;
    } else {
        formula = engine::exact_text(
            *length,
            {.form = engine::TapeForm::inch_fraction, .denominator = 64, .with_unit = true});
    }
}

void spell_out_units(Project& project, LengthUnit before, LengthUnit after) {
    walk_texts(project, [&](const Meaning& meaning, std::string& text, const Trail&) {
        if (meaning.role == Role::formula && meaning.quantity == QuantityKind::length) {
            spell_out_unit(text, before, after);
        }
    });
    for (Dimension& dimension : project.dimensions) {
        if (dimension.kind != QuantityKind::length) continue;
        spell_out_unit(dimension.formula, before, after);
        if (dimension.least) spell_out_unit(*dimension.least, before, after);
        if (dimension.most) spell_out_unit(*dimension.most, before, after);
    }
}

}  // namespace

Changed change(Project& project, const SetShown& edit) {
    if (auto sound = check_thing(edit.shown, "style of lengths"); !sound) return sound;
    const LengthUnit before = engine::bare_unit(project.shown);
    const LengthUnit after = engine::bare_unit(edit.shown);
    if (before != after) spell_out_units(project, before, after);
    project.shown = edit.shown;
    return engine::Done{};
}

}  // namespace model

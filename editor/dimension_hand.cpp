#include "editor/dimension_hand.h"

#include "editor/by_name.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"

namespace editor {
namespace {

const model::Dimension* find_dimension(const Derived& derived, const std::string& name) {
    return by_name(derived.project->dimensions, name);
}

// Both the reading of the text and what it would give, before anything is changed.
std::optional<std::string> reason_against(const Derived& derived, const TypedFormula& typed) {
    const auto edited =
        model::apply(*derived.project, model::SetFormula{typed.dimension, typed.text});
    if (!edited) return error_words(edited.error(), typed.text);
    const auto value = tried_formula(*derived.project, typed.dimension, typed.text);
    if (!value) return error_words(value.error(), typed.text);
    return reason_by_limits(*edited, typed.dimension);
}

}  // namespace

void begin_typing(DimensionHand& hand, const model::Dimension& dimension, std::string strip) {
    const bool goes_on = hand.refused && hand.refused->dimension == dimension.name;
    const std::string& text = goes_on ? hand.refused->text : dimension.formula;
    hand.typed = TypedFormula{dimension.name, std::move(strip), text};
    if (!goes_on) hand.refused.reset();
}

std::optional<Change> take_typed(DimensionHand& hand, const Derived& derived, bool keep_field) {
    if (!hand.typed) return std::nullopt;
    const TypedFormula typed = *hand.typed;
    const model::Dimension* dimension = find_dimension(derived, typed.dimension);
    hand.refused.reset();
    if (dimension == nullptr || typed.text == dimension->formula) {
        hand.typed.reset();
        return std::nullopt;
    }
    if (const auto reason = reason_against(derived, typed)) {
        hand.refused = RefusedFormula{typed.dimension, typed.text, *reason};
        hand.typed->wants_focus = true;
        if (!keep_field) hand.typed.reset();
        return std::nullopt;
    }
    hand.typed.reset();
    return change_of(model::SetFormula{typed.dimension, typed.text});
}

std::string nudged_formula(const Derived& derived,
                           const std::string& dimension,
                           const std::string& formula,
                           double steps) {
    const model::Dimension* known = find_dimension(derived, dimension);
    const auto value = tried_formula(*derived.project, dimension, formula);
    if (known == nullptr || !value) return formula;
    const auto& shown = derived.project->shown;
    return formula_of(stepped(*value, steps, limits_of(derived, *known), shown), shown);
}

void begin_drag(DimensionHand& hand,
                const Derived& derived,
                const model::Dimension& dimension,
                std::string strip) {
    hand.refused.reset();
    hand.typed.reset();
    const auto value = value_of(derived, dimension.name);
    if (!value || !is_plain_value(*derived.project, dimension)) {
        hand.refused = RefusedFormula{dimension.name, dimension.formula,
                                      "follows a formula: click it and type to change it"};
        return;
    }
    hand.dragged = DraggedValue{dimension.name, std::move(strip), *value,
                                "drag " + dimension.name + " " + std::to_string(++hand.drags)};
}

std::optional<Change> dragged_change(const DimensionHand& hand,
                                     const Derived& derived,
                                     double steps) {
    if (!hand.dragged) return std::nullopt;
    const model::Dimension* dimension = find_dimension(derived, hand.dragged->dimension);
    if (dimension == nullptr) return std::nullopt;
    const auto& shown = derived.project->shown;
    const auto value = stepped(hand.dragged->start, steps, limits_of(derived, *dimension), shown);
    const model::Formula formula = formula_of(value, shown);
    if (formula == dimension->formula) return std::nullopt;
    return change_of(model::SetFormula{dimension->name, formula}, hand.dragged->merge_key);
}

}  // namespace editor

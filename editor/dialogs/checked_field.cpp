#include "editor/dialogs/checked_field.h"

#include "editor/dialogs/form_line.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"
#include "editor/kit/item_log.h"
#include "editor/kit/widgets.h"

namespace editor {
namespace {

constexpr std::array<const char*, 3> axis_names{"x", "y", "z"};
constexpr std::array<const char*, 3> axis_words{"X", "Y", "Z"};

// Three fields and their letters on the rest of the line.
float width_of_three() {
    const auto& style = ImGui::GetStyle();
    const float letter = size_of_text("X", Type::text).x + style.ItemSpacing.x;
    return (ImGui::GetContentRegionAvail().x - 3 * letter - 2 * style.ItemSpacing.x) / 3;
}

// What a formula comes to, when the pointer rests on the field that was drawn last.
void hint_value(const Derived& derived, const model::Formula& formula) {
    if (!ImGui::IsItemHovered()) return;
    if (const auto words = comes_to(derived, formula); !words.empty()) draw_hint(words);
}

void draw_value_beside(const Derived& derived,
                       std::string_view name,
                       const model::Formula& formula) {
    const auto words = comes_to(derived, formula);
    if (words.empty()) return;
    ImGui::SameLine();
    draw_text(words, Type::small, colour::quiet);
    log_item("value of " + std::string(name), words);
}

// `derived`: of lengths, which tell what they come to; null for others.
void draw_three(const Derived* derived,
                std::string_view word,
                std::string_view name,
                std::array<std::string, 3>& texts) {
    draw_form_word(word);
    const float width = width_of_three();
    for (std::size_t k = 0; k < 3; ++k) {
        if (k > 0) ImGui::SameLine();
        ImGui::AlignTextToFramePadding();
        draw_text(axis_words[k], colour::quiet);
        ImGui::SameLine();
        draw_field(std::string(name) + " " + axis_names[k], texts[k], {.width = width});
        if (derived != nullptr) hint_value(*derived, texts[k]);
    }
}

}  // namespace

void CheckedFields::draw_length(std::string_view word,
                                std::string_view name,
                                model::Formula& formula,
                                std::string_view hint,
                                bool may_be_empty) {
    draw_short_line(word, name, formula, hint);
    draw_value_beside(derived_, name, formula);
    check(name, word, formula, engine::QuantityKind::length, may_be_empty);
    draw_faults();
}

void CheckedFields::draw_angle(std::string_view word,
                               std::string_view name,
                               model::Formula& formula,
                               std::string_view hint) {
    draw_short_line(word, name, formula, hint);
    check(name, word, formula, engine::QuantityKind::angle, false);
    draw_faults();
}

void CheckedFields::draw_lengths(Length first, Length second) {
    draw_short_line(first.word, first.name, first.formula, first.hint);
    hint_value(derived_, first.formula);
    draw_short_beside(second.word, second.name, second.formula, second.hint);
    hint_value(derived_, second.formula);
    for (const auto& it : {first, second}) {
        check(it.name, it.word, it.formula, engine::QuantityKind::length, it.may_be_empty);
    }
    draw_faults();
}

void CheckedFields::draw_place(std::string_view word, std::string_view name, model::Place& place) {
    draw_three(&derived_, word, name, place);
    for (std::size_t k = 0; k < 3; ++k) {
        check(std::string(name) + " " + axis_names[k], std::string(word) + ", " + axis_words[k],
              place[k], engine::QuantityKind::length, false);
    }
    draw_faults();
}

void CheckedFields::draw_turn(std::string_view word,
                              std::string_view name,
                              std::array<model::Formula, 3>& angles) {
    draw_three(nullptr, word, name, angles);
    for (std::size_t k = 0; k < 3; ++k) {
        check(std::string(name) + " " + axis_names[k], std::string(word) + ", " + axis_words[k],
              angles[k], engine::QuantityKind::angle, false);
    }
    draw_faults();
}

bool CheckedFields::draw_reading(char letter,
                                 std::string_view word,
                                 std::string_view name,
                                 model::Formula& formula,
                                 std::string_view hint,
                                 bool may_be_empty) {
    ImGui::AlignTextToFramePadding();
    const float left = ImGui::GetCursorPosX();
    draw_text(std::string(1, letter), Type::strong, colour::dye);
    ImGui::SameLine();
    ImGui::SetCursorPosX(left + scaled(18));
    draw_text(word, colour::quiet);
    ImGui::SameLine();
    ImGui::SetCursorPosX(left + scaled(218));
    const bool is_active = draw_field(name, formula, {.hint = hint}).active;
    hint_value(derived_, formula);
    check(name, word, formula, engine::QuantityKind::length, may_be_empty);
    draw_faults();
    return is_active;
}

bool CheckedFields::draw_cell(std::string_view name,
                              std::string_view what,
                              model::Formula& formula,
                              bool may_be_empty) {
    const bool is_active = draw_field(name, formula).active;
    hint_value(derived_, formula);
    check(name, what, formula, engine::QuantityKind::length, may_be_empty);
    return is_active;
}

void CheckedFields::draw_faults() {
    for (const auto& fault : faults_) {
        draw_wrapped(fault.text, Type::small, colour::red);
        log_item("fault of " + fault.name, fault.text);
    }
    faults_.clear();
}

// Also remembers that the field has held something.
bool CheckedFields::is_asked(std::string_view name, const model::Formula& formula) {
    if (asked_ == nullptr || asked_->all) return true;
    if (!formula.empty()) asked_->typed.emplace(name);
    return asked_->typed.contains(name);
}

void CheckedFields::check(std::string_view name,
                          std::string_view what,
                          const model::Formula& formula,
                          engine::QuantityKind kind,
                          bool may_be_empty) {
    const bool is_told = is_asked(name, formula);
    if (formula.empty() && may_be_empty) return;
    std::string reason = kind == engine::QuantityKind::length ? "give a length" : "give an angle";
    if (!formula.empty()) {
        const auto value = kind == engine::QuantityKind::length
                               ? tried_length(derived_, formula)
                               : tried_limit(*derived_.project, kind, formula);
        if (value) return;
        reason = error_words(value.error(), formula);
    }
    are_all_known_ = false;
    if (!is_told) return;
    faults_.push_back({std::string(name), std::string(what) + ": " + reason});
}

}  // namespace editor

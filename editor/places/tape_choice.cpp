#include "editor/places/tape_choice.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <array>

namespace editor {
namespace {

using engine::TapeForm;
using engine::TapeStyle;

constexpr std::array<TapeStyle, 7> tapes{{{TapeForm::inch_fraction, 16, 3, false},
                                          {TapeForm::inch_fraction, 32, 3, false},
                                          {TapeForm::inch_fraction, 64, 3, false},
                                          {TapeForm::feet_inches, 32, 3, false},
                                          {TapeForm::inch_decimal, 32, 3, false},
                                          {TapeForm::millimetre, 32, 0, false},
                                          {TapeForm::millimetre, 32, 1, false}}};

}  // namespace

std::span<const TapeStyle> offered_tapes() { return tapes; }

std::string tape_name(const TapeStyle& shown) {
    switch (shown.form) {
        case TapeForm::inch_fraction:
            return "tape 1/" + std::to_string(shown.denominator) + " in";
        case TapeForm::feet_inches:
            return "feet, inches, 1/" + std::to_string(shown.denominator) + " in";
        case TapeForm::inch_decimal:
            return "decimal inches";
        case TapeForm::millimetre:
            return shown.decimals == 0 ? "tape 1 mm" : "millimetres, decimal";
        case TapeForm::centimetre:
            return "centimetres";
        case TapeForm::metre:
            return "metres";
    }
    return "";
}

std::optional<Change> draw_tape_choice(const TapeStyle& shown) {
    const std::string text = tape_name(shown) + " \xE2\x96\xBE";
    const float width = size_of_text(text, Type::small).x + 2 * ImGui::GetStyle().FramePadding.x;
    ImGui::SetCursorPosX(ImGui::GetCursorPosX() + ImGui::GetContentRegionAvail().x - width +
                         ImGui::GetStyle().FramePadding.x);
    {
        const FontScope small(Type::small);
        const StyleScope flat(ImGuiStyleVar_FramePadding, scaled(10, 2));
        if (draw_button("Tape", {.text = text, .weight = Weight::link})) {
            ImGui::OpenPopup("Tape list");
        }
        draw_hint(
            "How lengths are read and shown. Holes lie on the tape's marks: with another tape they "
            "move to the marks of that one");
    }
    const PopupScope open("Tape list");
    if (!open) return std::nullopt;
    std::optional<Change> change;
    for (const auto& tape : tapes) {
        TapeStyle chosen = tape;
        chosen.with_unit = shown.with_unit;
        const std::string name = tape_name(tape);
        if (draw_row(name, name, name == tape_name(shown)).clicked) {
            change = change_of(model::SetShown{chosen});
        }
    }
    return change;
}

}  // namespace editor

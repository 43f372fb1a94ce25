#include "editor/dialogs/form_line.h"

#include "editor/kit/term.h"

#include <algorithm>

namespace editor {
namespace {

constexpr float short_field = 180.0F;
constexpr float second_word = 330.0F;
constexpr float second_column = 418.0F;

}  // namespace

void draw_form_line(std::string_view name,
                    std::string& text,
                    std::string_view hint,
                    bool wants_focus) {
    draw_form_word(name);
    draw_field(name, text, {.hint = hint, .wants_focus = wants_focus});
}

void draw_short_line(std::string_view name,
                     std::string& text,
                     std::string_view hint,
                     bool wants_focus) {
    draw_form_word(name);
    draw_field(name, text,
               {.hint = hint, .width = scaled(short_field), .wants_focus = wants_focus});
}

void draw_short_line(std::string_view word,
                     std::string_view name,
                     std::string& text,
                     std::string_view hint) {
    draw_form_word(word);
    draw_field(name, text, {.hint = hint, .width = scaled(short_field)});
}

void draw_short_beside(std::string_view word,
                       std::string_view name,
                       std::string& text,
                       std::string_view hint) {
    ImGui::SameLine(scaled(second_word));
    ImGui::AlignTextToFramePadding();
    draw_term(word, colour::quiet);
    ImGui::SameLine(scaled(second_column));
    const float width = std::min(scaled(short_field), ImGui::GetContentRegionAvail().x);
    draw_field(name, text, {.hint = hint, .width = width});
}

void draw_form_word(std::string_view word) {
    ImGui::AlignTextToFramePadding();
    draw_term(word, colour::quiet);
    ImGui::SameLine(scaled(form_column));
}

}  // namespace editor

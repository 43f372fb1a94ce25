// A line of a form: a word, and a field or choices beside it.
#pragma once

#include "editor/kit/widgets.h"

#include <imgui.h>

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

namespace editor {

// Where fields begin, in design pixels from the left edge of the form.
inline constexpr float form_column = 104.0F;

// The field is as wide as what is left of the line.
void draw_form_line(std::string_view name,
                    std::string& text,
                    std::string_view hint,
                    bool wants_focus = false);

// The field is short, as for one length; another one may stand beside it in the same line.
void draw_short_line(std::string_view name,
                     std::string& text,
                     std::string_view hint,
                     bool wants_focus = false);
// The word may be another one than the name by which the field is known.
void draw_short_line(std::string_view word,
                     std::string_view name,
                     std::string& text,
                     std::string_view hint);
void draw_short_beside(std::string_view word,
                       std::string_view name,
                       std::string& text,
                       std::string_view hint);

// The word alone; what comes next begins at the column.
void draw_form_word(std::string_view word);

// The word, and one of the choices beside it.
template <class Value>
void draw_radio_line(std::string_view word,
                     Value& value,
                     std::initializer_list<std::pair<Value, const char*>> choices) {
    draw_form_word(word);
    bool is_first = true;
    for (const auto& [choice, text] : choices) {
        if (!is_first) ImGui::SameLine();
        is_first = false;
        if (draw_radio(text, value == choice)) value = choice;
    }
}

}  // namespace editor

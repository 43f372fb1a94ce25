// A line of a form: a word, and a field beside it.
#pragma once

#include <string>
#include <string_view>

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
void draw_short_beside(std::string_view word,
                       std::string_view name,
                       std::string& text,
                       std::string_view hint);

// The word alone; what comes next begins at the column.
void draw_form_word(std::string_view word);

}  // namespace editor

#include "editor/dialogs/form_line.h"

#include "editor/kit/widgets.h"

#include <imgui.h>

namespace editor {

void draw_form_line(std::string_view name,
                    std::string& text,
                    std::string_view hint,
                    bool wants_focus) {
    draw_form_word(name);
    draw_field(name, text, {.hint = hint, .wants_focus = wants_focus});
}

void draw_form_word(std::string_view word) {
    ImGui::AlignTextToFramePadding();
    draw_text(word, colour::quiet);
    ImGui::SameLine(scaled(form_column));
}

}  // namespace editor

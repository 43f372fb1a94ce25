// The window's buttons, fields and texts. Each interactive one is known by a stable name, which
// tests use; the text on it may differ.
#pragma once

#include "editor/kit/theme.h"

#include <functional>
#include <string>
#include <string_view>

namespace editor {

// ---- text ---------------------------------------------------------------------------------------

void draw_text(std::string_view text, ImU32 packed = colour::ink);
void draw_text(std::string_view text, Type type, ImU32 packed = colour::ink);
void draw_wrapped(std::string_view text, Type type = Type::text, ImU32 packed = colour::ink);

// Right-aligned in what is left of the line or cell.
void draw_text_right(std::string_view text, ImU32 packed = colour::ink);

// Onto any drawing, without an item; returns the width.
enum class Align { left, middle, right };
float draw_text_at(ImDrawList& on,
                   ImVec2 at,
                   std::string_view text,
                   Type type,
                   ImU32 packed,
                   Align align = Align::left);
ImVec2 size_of_text(std::string_view text, Type type);

// On as many lines as it needs in that width, and the room that it takes then.
void draw_wrapped_at(
    ImDrawList& on, ImVec2 at, std::string_view text, Type type, ImU32 packed, float width);
ImVec2 size_of_text(std::string_view text, Type type, float width);

// Shortened with an ellipsis to fit the width.
std::string text_to_fit(std::string_view text, Type type, float width);

// What stands on a button of that width that opens a list: shortened rather than its arrow lost.
std::string text_with_arrow(std::string_view text, float width);

// A thin rule across the panel with room above and below.
void draw_rule(float room = 8.0F);

// ---- things to press ----------------------------------------------------------------------------

enum class Weight {
    main,   // what the place or dialog is for: on dye
    plain,  // outlined
    link,   // text only
};

struct ButtonLook {
    std::string_view text;  // empty: the name
    Weight weight = Weight::plain;
    bool enabled = true;
    float width = 0.0F;  // 0: as wide as the text
};

bool draw_button(std::string_view name, const ButtonLook& look = {});

bool draw_check(std::string_view name, bool& value, std::string_view text);

// One of several that exclude each other; true when it is clicked.
bool draw_radio(std::string_view name, bool is_chosen);

// A row that is chosen by clicking; spans the panel or the table's columns.
struct RowClick {
    bool clicked = false;
    bool twice = false;
    bool hovered = false;
};
RowClick draw_row(std::string_view name, std::string_view text, bool selected, bool spans = false);

// ---- fields -------------------------------------------------------------------------------------

struct FieldLook {
    std::string_view hint;
    float width = -1.0F;  // -1: the rest of the line
    bool wants_focus = false;
    bool select_all = true;
    // What the text becomes by the arrow keys: 1 up, -1 down. None: they do nothing.
    std::function<std::string(const std::string& text, int by)> nudged;
};

struct FieldState {
    bool changed = false;
    bool entered = false;  // Enter was pressed
    bool left = false;     // lost the focus, by Enter, Escape, Tab or a click elsewhere
    bool active = false;
};

FieldState draw_field(std::string_view name, std::string& text, const FieldLook& look = {});

// Shown when the pointer rests on the last item.
void draw_hint(std::string_view text);

bool is_pressed(int key_code, bool repeats = false);

}  // namespace editor

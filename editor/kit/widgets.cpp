#include "editor/kit/widgets.h"

#include "editor/kit/hover_help.h"
#include "editor/kit/item_log.h"
#include "editor/kit/scopes.h"

#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace editor {
namespace {

// What is filled in or ticked is a sheet with an edge.
class OutlineScope {
    StyleScope line_{ImGuiStyleVar_FrameBorderSize, scaled(1)};
    ColourScope ground_{ImGuiCol_FrameBg, colour::sheet};
    ColourScope border_{ImGuiCol_Border, colour::edge};
};

const char* end_of(std::string_view text) { return text.data() + text.size(); }

// ImGui shows nothing of a label from "##" on, and from "###" on it begins the item's id anew. In
// what people call their things those are signs like others: a narrow space keeps them apart.
std::string with_signs_apart(std::string_view text) {
    std::string apart;
    for (const char c : text) {
        if (c == '#' && apart.ends_with('#')) apart += "\xE2\x80\xAF";
        apart += c;
    }
    return apart;
}

// "text###name": ImGui knows the item by its name, whatever is written on it.
std::string label_of(std::string_view name, std::string_view text) {
    return with_signs_apart(text.empty() ? name : text) + "###" + with_signs_apart(name);
}

// All bytes of it: those that continue a character, then the one that leads it.
void drop_last_character(std::string& text) {
    const auto continues = [](char byte) {
        return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
    };
    while (!text.empty() && continues(text.back())) text.pop_back();
    if (!text.empty()) text.pop_back();
}

struct ButtonColours {
    ImU32 text;
    ImU32 ground;
    ImU32 hovered;
    ImU32 pressed;
    float border;
};

ButtonColours colours_of(Weight weight) {
    switch (weight) {
        case Weight::main:
            return {colour::scribed, colour::dye_ground, colour::dye_deep, colour::dye_deep, 0.0F};
        case Weight::plain:
            return {colour::ink, colour::sheet, colour::dye_wash, colour::dye_coat, 1.0F};
        case Weight::link:
            break;
    }
    return {colour::dye, colour::from_rgb(0, 0), colour::dye_wash, colour::dye_coat, 0.0F};
}

// The arrow keys in a field; ImGui keeps the text of an active field to itself, so the change must
// go through here.
int on_arrow(ImGuiInputTextCallbackData* data) {
    if (data->EventFlag != ImGuiInputTextFlags_CallbackHistory) return 0;
    const auto& look = *static_cast<const FieldLook*>(data->UserData);
    const std::string before(data->Buf, static_cast<std::size_t>(data->BufTextLen));
    const std::string after = look.nudged(before, data->EventKey == ImGuiKey_UpArrow ? 1 : -1);
    if (after == before) return 0;
    data->DeleteChars(0, data->BufTextLen);
    data->InsertChars(0, after.c_str());
    data->SelectAll();
    return 0;
}

}  // namespace

void draw_text(std::string_view text, ImU32 packed) {
    const ColourScope ink(ImGuiCol_Text, packed);
    ImGui::TextUnformatted(text.data(), end_of(text));
}

void draw_text(std::string_view text, Type type, ImU32 packed) {
    const FontScope face(type);
    draw_text(text, packed);
}

void draw_wrapped(std::string_view text, Type type, ImU32 packed) {
    const FontScope face(type);
    const WrapScope wrap;
    draw_text(text, packed);
}

void draw_text_right(std::string_view text, ImU32 packed) {
    const float width = ImGui::CalcTextSize(text.data(), end_of(text)).x;
    const float room = ImGui::GetContentRegionAvail().x - width;
    if (room > 0) ImGui::SetCursorPosX(ImGui::GetCursorPosX() + room);
    draw_text(text, packed);
}

ImVec2 size_of_text(std::string_view text, Type type) { return size_of_text(text, type, 0.0F); }

ImVec2 size_of_text(std::string_view text, Type type, float width) {
    const ImFont* face = font(type);
    return face->CalcTextSizeA(face->FontSize, 1.0e6F, width, text.data(), end_of(text));
}

void draw_wrapped_at(
    ImDrawList& on, ImVec2 at, std::string_view text, Type type, ImU32 packed, float width) {
    const ImFont* face = font(type);
    on.AddText(face, face->FontSize, at, packed, text.data(), end_of(text), width);
}

float draw_text_at(
    ImDrawList& on, ImVec2 at, std::string_view text, Type type, ImU32 packed, Align align) {
    const float width = size_of_text(text, type).x;
    if (align == Align::middle) at.x -= width / 2;
    if (align == Align::right) at.x -= width;
    const ImFont* face = font(type);
    on.AddText(face, face->FontSize, at, packed, text.data(), end_of(text));
    return width;
}

std::string text_to_fit(std::string_view text, Type type, float width) {
    if (size_of_text(text, type).x <= width) return std::string(text);
    std::string shorter(text);
    while (!shorter.empty() && size_of_text(shorter + "\xE2\x80\xA6", type).x > width) {
        drop_last_character(shorter);
    }
    return shorter + "\xE2\x80\xA6";
}

std::string text_with_arrow(std::string_view text, float width) {
    const std::string arrow = "  \xE2\x96\xBE";
    const float room =
        width - 2 * ImGui::GetStyle().FramePadding.x - size_of_text(arrow, Type::text).x;
    return text_to_fit(text, Type::text, room) + arrow;
}

void draw_rule(float room) {
    ImGui::Dummy(scaled(1, room / 2));
    const ImVec2 from = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    ImGui::GetWindowDrawList()->AddLine(from, {from.x + width, from.y}, colour::line, scaled(1));
    ImGui::Dummy(scaled(1, room / 2));
}

bool draw_button(std::string_view name, const ButtonLook& look) {
    const ButtonColours colours = colours_of(look.weight);
    const DisabledScope disabled(!look.enabled);
    const ColourScope text(ImGuiCol_Text, colours.text);
    const ColourScope ground(ImGuiCol_Button, colours.ground);
    const ColourScope hovered(ImGuiCol_ButtonHovered, colours.hovered);
    const ColourScope pressed(ImGuiCol_ButtonActive, colours.pressed);
    const ColourScope border(ImGuiCol_Border, colour::edge);
    const StyleScope outline(ImGuiStyleVar_FrameBorderSize, colours.border * scaled(1));
    const bool is_pressed = ImGui::Button(label_of(name, look.text).c_str(), {look.width, 0});
    log_item(name);
    return is_pressed;
}

bool draw_check(std::string_view name, bool& value, std::string_view text) {
    const OutlineScope outline;
    const bool changed = ImGui::Checkbox(label_of(name, text).c_str(), &value);
    log_item(name, value ? "yes" : "no");
    return changed;
}

bool draw_radio(std::string_view name, bool is_chosen) {
    const OutlineScope outline;
    const bool clicked = ImGui::RadioButton(label_of(name, name).c_str(), is_chosen);
    log_item(name, is_chosen ? "chosen" : "");
    return clicked;
}

RowClick draw_row(std::string_view name, std::string_view text, bool selected, bool spans) {
    RowClick click;
    const ImGuiSelectableFlags flags =
        ImGuiSelectableFlags_AllowDoubleClick |
        (spans ? ImGuiSelectableFlags_SpanAllColumns | ImGuiSelectableFlags_AllowItemOverlap : 0);
    click.clicked = ImGui::Selectable(label_of(name, text).c_str(), selected, flags);
    click.hovered = ImGui::IsItemHovered();
    click.twice = click.clicked && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left);
    log_item(name, selected ? "chosen" : "");
    return click;
}

FieldState draw_field(std::string_view name, std::string& text, const FieldLook& look) {
    const std::string label = "###" + with_signs_apart(name);
    const std::string hint(look.hint);
    const std::string before = text;
    if (look.wants_focus) ImGui::SetKeyboardFocusHere();
    ImGui::SetNextItemWidth(look.width);
    const OutlineScope outline;
    FieldState state;
    ImGuiInputTextFlags flags = ImGuiInputTextFlags_EnterReturnsTrue;
    if (look.select_all) flags |= ImGuiInputTextFlags_AutoSelectAll;
    if (look.nudged) flags |= ImGuiInputTextFlags_CallbackHistory;
    FieldLook for_callback = look;
    state.entered = ImGui::InputTextWithHint(label.c_str(), hint.c_str(), &text, flags,
                                             look.nudged ? on_arrow : nullptr, &for_callback);
    state.changed = text != before;
    state.left = ImGui::IsItemDeactivated();
    state.active = ImGui::IsItemActive();
    log_item(name, text);
    return state;
}

void draw_hint(std::string_view text) {
    if (!has_rested_on_item()) return;
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(10, 7));
    const float width = scaled(350);
    const HelpScope help(ImGui::CalcTextSize(text.data(), end_of(text), false, width));
    ImGui::PushTextWrapPos(width + scaled(10));
    draw_text(text);
    ImGui::PopTextWrapPos();
    const ImVec2 at = ImGui::GetWindowPos();
    const ImVec2 size = ImGui::GetWindowSize();
    log_rectangle("help",
                  {at.x, at.y, at.x + size.x, at.y + size.y, true, true, std::string(text)});
}

bool is_pressed(int key_code, bool repeats) { return ImGui::IsKeyPressed(key_code, repeats); }

}  // namespace editor

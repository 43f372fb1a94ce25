#include "editor/kit/theme.h"

#include <utility>

namespace editor {
namespace {

ImVec4 as_vector(ImU32 packed) { return ImGui::ColorConvertU32ToFloat4(packed); }

void set_colours(ImGuiStyle& style) {
    const std::pair<ImGuiCol, ImU32> pairs[] = {
        {ImGuiCol_Text, colour::ink},
        {ImGuiCol_TextDisabled, colour::from_rgb(0x8f897b)},
        {ImGuiCol_WindowBg, colour::panel},
        {ImGuiCol_ChildBg, colour::from_rgb(0, 0)},
        {ImGuiCol_PopupBg, colour::panel},
        {ImGuiCol_Border, colour::line},
        {ImGuiCol_BorderShadow, colour::from_rgb(0, 0)},
        {ImGuiCol_FrameBg, colour::field},
        {ImGuiCol_FrameBgHovered, colour::from_rgb(0xe7e2d5)},
        {ImGuiCol_FrameBgActive, colour::from_rgb(0xffffff)},
        {ImGuiCol_TitleBg, colour::panel},
        {ImGuiCol_TitleBgActive, colour::panel},
        {ImGuiCol_TitleBgCollapsed, colour::panel},
        {ImGuiCol_MenuBarBg, colour::panel},
        {ImGuiCol_ScrollbarBg, colour::from_rgb(0, 0)},
        {ImGuiCol_ScrollbarGrab, colour::from_rgb(0xd8d3c6)},
        {ImGuiCol_ScrollbarGrabHovered, colour::edge},
        {ImGuiCol_ScrollbarGrabActive, colour::quiet},
        {ImGuiCol_CheckMark, colour::dye},
        {ImGuiCol_SliderGrab, colour::dye},
        {ImGuiCol_SliderGrabActive, colour::dye_deep},
        {ImGuiCol_Button, colour::field},
        {ImGuiCol_ButtonHovered, colour::from_rgb(0xe3dccb)},
        {ImGuiCol_ButtonActive, colour::from_rgb(0xd8d3c6)},
        {ImGuiCol_Header, colour::dye_wash},
        {ImGuiCol_HeaderHovered, colour::from_rgb(0xecf0ff)},
        {ImGuiCol_HeaderActive, colour::scribed_soft},
        {ImGuiCol_Separator, colour::line},
        {ImGuiCol_SeparatorHovered, colour::scribed_soft},
        {ImGuiCol_SeparatorActive, colour::dye},
        {ImGuiCol_TableHeaderBg, colour::panel},
        {ImGuiCol_TableBorderStrong, colour::line},
        {ImGuiCol_TableBorderLight, colour::line},
        {ImGuiCol_TableRowBg, colour::from_rgb(0, 0)},
        {ImGuiCol_TableRowBgAlt, colour::from_rgb(0x2b2a27, 8)},
        {ImGuiCol_TextSelectedBg, colour::scribed_soft},
        {ImGuiCol_NavHighlight, colour::dye},
        {ImGuiCol_ModalWindowDimBg, colour::shade},
    };
    for (const auto& [which, packed] : pairs) style.Colors[which] = as_vector(packed);
}

}  // namespace

ImFont* font(Type type) {
    const auto& fonts = ImGui::GetIO().Fonts->Fonts;
    const int index = static_cast<int>(type);
    return index < fonts.Size ? fonts[index] : ImGui::GetFont();
}

float scaled(float pixels) { return pixels * font(Type::text)->FontSize / text_size; }

ImVec2 scaled(float x, float y) { return {scaled(x), scaled(y)}; }

void set_style(float scale) {
    ImGuiStyle style;
    style.WindowPadding = {16, 14};
    style.WindowRounding = 0;
    style.WindowBorderSize = 0;
    style.PopupRounding = 4;
    style.PopupBorderSize = 1;
    style.FramePadding = {10, 5};
    style.FrameRounding = 3;
    style.ItemSpacing = {8, 6};
    style.ItemInnerSpacing = {6, 4};
    style.CellPadding = {5, 4};
    style.ScrollbarSize = 11;
    style.ScrollbarRounding = 5;
    style.GrabMinSize = 10;
    style.ChildBorderSize = 0;
    set_colours(style);
    style.ScaleAllSizes(scale);
    ImGui::GetStyle() = style;
}

}  // namespace editor

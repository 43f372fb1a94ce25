#include "editor/kit/theme.h"

#include <utility>

namespace editor {
namespace {

struct Shade {
    ImU32* colour;
    unsigned light;
    unsigned dark;
};

// Light: warm paper in daylight. Dark: the same bench in the evening; what is written on grounds
// keeps its contrast.
constexpr Shade shades[] = {
    {&colour::paper, 0xf4f1ea, 0x1d1f22},        {&colour::panel, 0xfbfaf6, 0x26282c},
    {&colour::sheet, 0xffffff, 0x1a1c1f},        {&colour::line, 0xe3dfd3, 0x3a3d43},
    {&colour::field, 0xece7da, 0x34373d},        {&colour::field_hover, 0xe7e2d5, 0x3c4047},
    {&colour::field_press, 0xd8d3c6, 0x484d55},  {&colour::edge, 0xb9b4a7, 0x60656f},
    {&colour::ink, 0x2b2a27, 0xeae7de},          {&colour::quiet, 0x67635a, 0xb6b2a6},
    {&colour::faint, 0x756f62, 0x98948a},        {&colour::dye, 0x2d3f86, 0xa3b4ff},
    {&colour::dye_ground, 0x2d3f86, 0x34499c},   {&colour::dye_deep, 0x22306a, 0x4259b8},
    {&colour::dye_wash, 0xdfe6ff, 0x333b57},     {&colour::dye_coat, 0xb9c5f2, 0x3c4878},
    {&colour::scribed, 0xffffff, 0xffffff},      {&colour::scribed_soft, 0xb9c5f2, 0xb9c5f2},
    {&colour::tape, 0xf1c948, 0xd9b33c},         {&colour::tape_hover, 0xf6d664, 0xe6c252},
    {&colour::tape_edge, 0x8a6d10, 0x8a6d10},    {&colour::tape_mark, 0x5b4a0c, 0x4a3c09},
    {&colour::tape_text, 0x4d3f0a, 0x3b3007},    {&colour::tape_ink, 0x2b2a27, 0x1c1b18},
    {&colour::band, 0x9fb08a, 0x70885a},         {&colour::amber, 0x8f5c07, 0xe8b45c},
    {&colour::amber_ground, 0xf7ead0, 0x3c3322}, {&colour::amber_edge, 0xd9b86a, 0x7c642f},
    {&colour::red, 0xa3281c, 0xf59a8d},          {&colour::red_ground, 0xf8dfda, 0x452724},
    {&colour::red_edge, 0xd98f85, 0x91504a},     {&colour::note_ground, 0xf0ede4, 0x2f3237},
    {&colour::metal, 0xc9ccd0, 0x565b63},        {&colour::metal_edge, 0x8c9096, 0x8c9096}};

void set_palette(Theme theme) {
    const bool is_dark = theme == Theme::dark;
    for (const auto& shade : shades)
        *shade.colour = colour::from_rgb(is_dark ? shade.dark : shade.light);
    colour::shade = is_dark ? colour::from_rgb(0, 130) : colour::from_rgb(0x2b2a27, 70);
}

ImVec4 as_vector(ImU32 packed) { return ImGui::ColorConvertU32ToFloat4(packed); }

void set_colours(ImGuiStyle& style) {
    const std::pair<ImGuiCol, ImU32> pairs[] = {
        {ImGuiCol_Text, colour::ink},
        {ImGuiCol_TextDisabled, colour::faint},
        {ImGuiCol_WindowBg, colour::panel},
        {ImGuiCol_ChildBg, colour::from_rgb(0, 0)},
        {ImGuiCol_PopupBg, colour::panel},
        {ImGuiCol_Border, colour::line},
        {ImGuiCol_BorderShadow, colour::from_rgb(0, 0)},
        {ImGuiCol_FrameBg, colour::field},
        {ImGuiCol_FrameBgHovered, colour::field_hover},
        {ImGuiCol_FrameBgActive, colour::sheet},
        {ImGuiCol_TitleBg, colour::panel},
        {ImGuiCol_TitleBgActive, colour::panel},
        {ImGuiCol_TitleBgCollapsed, colour::panel},
        {ImGuiCol_MenuBarBg, colour::panel},
        {ImGuiCol_ScrollbarBg, colour::from_rgb(0, 0)},
        {ImGuiCol_ScrollbarGrab, colour::field_press},
        {ImGuiCol_ScrollbarGrabHovered, colour::edge},
        {ImGuiCol_ScrollbarGrabActive, colour::quiet},
        {ImGuiCol_CheckMark, colour::dye},
        {ImGuiCol_SliderGrab, colour::dye},
        {ImGuiCol_SliderGrabActive, colour::dye},
        {ImGuiCol_Button, colour::field},
        {ImGuiCol_ButtonHovered, colour::field_hover},
        {ImGuiCol_ButtonActive, colour::field_press},
        {ImGuiCol_Header, colour::dye_wash},
        {ImGuiCol_HeaderHovered, colour::dye_wash},
        {ImGuiCol_HeaderActive, colour::dye_coat},
        {ImGuiCol_Separator, colour::line},
        {ImGuiCol_SeparatorHovered, colour::dye_coat},
        {ImGuiCol_SeparatorActive, colour::dye},
        {ImGuiCol_TableHeaderBg, colour::panel},
        {ImGuiCol_TableBorderStrong, colour::line},
        {ImGuiCol_TableBorderLight, colour::line},
        {ImGuiCol_TableRowBg, colour::from_rgb(0, 0)},
        {ImGuiCol_TableRowBgAlt, colour::from_rgb(0x808080, 16)},
        {ImGuiCol_TextSelectedBg, colour::dye_coat},
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

void set_style(float scale, Theme theme) {
    set_palette(theme);
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

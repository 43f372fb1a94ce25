#include "editor/painter.h"

#include "editor/kit/fonts.h"
#include "editor/kit/theme.h"
#include "editor/seen_scene.h"
#include "editor/view/view_panel.h"

#include <glad/gl.h>
// glad's header must come first.
#include <GLFW/glfw3.h>
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>

namespace editor {
namespace {

// The panels name the scene's picture without knowing its texture.
void put_texture(ImDrawData& data, unsigned texture) {
    const auto real = reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(texture));
    for (int i = 0; i < data.CmdListsCount; ++i) {
        for (auto& command : data.CmdLists[i]->CmdBuffer) {
            if (command.TextureId == scene_picture()) command.TextureId = real;
        }
    }
}

engine::SceneStyle style_of(float scale, Theme theme) {
    engine::SceneStyle style;
    if (theme == Theme::dark) {
        style.paper = {0x1D, 0x1F, 0x22};  // colour::paper
        style.grid = {0x36, 0x39, 0x3F};
        style.selected = {0x6F, 0x8B, 0xF5};
        style.hovered = {0x9F, 0xB2, 0xF5};
    }
    style.line_width *= std::max(1.0F, scale);
    style.grid_width *= std::max(1.0F, scale);
    return style;
}

// On the dark ground its lines are pale.
engine::SceneStyle line_drawing(engine::SceneStyle style, Theme theme) {
    style.is_line_drawing = true;
    if (theme == Theme::dark) {
        style.ink = {0xEA, 0xE7, 0xDE};
    } else {
        style.paper = {0xFF, 0xFF, 0xFF};
    }
    return style;
}

}  // namespace

Painter::Painter(GLFWwindow* window, int samples, float fonts_scale)
    : window_{window}, samples_{samples}, fonts_scale_{fonts_scale} {
    ImGui_ImplGlfw_InitForOpenGL(window, false);  // own callbacks: see input.h
    ImGui_ImplOpenGL3_Init("#version 330 core");
}

Painter::~Painter() {
    ImGui_ImplOpenGL3_Shutdown();
    ImGui_ImplGlfw_Shutdown();
}

void Painter::begin_frame() {
    ImGui_ImplOpenGL3_NewFrame();
    ImGui_ImplGlfw_NewFrame();
}

void Painter::use_look(float scale, Theme theme) {
    if (scale != fonts_scale_) {
        ImGui_ImplOpenGL3_DestroyFontsTexture();
        load_fonts(*ImGui::GetIO().Fonts, scale);
        // Before the first frame there is nothing to put it in yet: that frame makes it.
        if (scale_ > 0.0F) ImGui_ImplOpenGL3_CreateFontsTexture();
        fonts_scale_ = scale;
    }
    if (scale != scale_ || theme != theme_) set_style(scale, theme);
    scale_ = scale;
    theme_ = theme;
}

void Painter::paint(Desk& desk) {
    const Derived& now = derived(desk);
    const auto& view = desk.ui.view;
    const auto& way = desk.ui.seeing.way;
    auto emphasis = emphasis_of(now, desk.ui.selection, view);
    if (way.alone) emphasis.selected.clear();  // there is nothing to tell it from
    auto style = style_of(scale_, theme_);
    if (way.as_line_drawing) style = line_drawing(style, theme_);
    // The first picture comes sooner with edges that are not smoothed; the next follows at once.
    const int samples = has_painted_ ? samples_ : 0;
    has_painted_ = true;
    const unsigned texture =
        renderer_.draw(seen_scene(desk), emphasis, view.camera, view.viewport, style, samples);
    ImDrawData* data = ImGui::GetDrawData();
    put_texture(*data, texture);
    int width = 0;
    int height = 0;
    glfwGetFramebufferSize(window_, &width, &height);
    glViewport(0, 0, width, height);
    const ImVec4 ground = ImGui::ColorConvertU32ToFloat4(colour::paper);
    glClearColor(ground.x, ground.y, ground.z, 1.0F);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(data);
}

engine::Image Painter::picture() const {
    engine::Image image;
    glfwGetFramebufferSize(window_, &image.width, &image.height);
    const auto row = static_cast<std::size_t>(image.width) * 4;
    std::vector<std::uint8_t> upwards(row * static_cast<std::size_t>(image.height));
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadBuffer(GL_BACK);
    glReadPixels(0, 0, image.width, image.height, GL_RGBA, GL_UNSIGNED_BYTE, upwards.data());
    for (auto at = upwards.size(); at >= row && row > 0; at -= row) {
        const auto from = upwards.begin() + static_cast<std::ptrdiff_t>(at - row);
        image.rgba.insert(image.rgba.end(), from, from + static_cast<std::ptrdiff_t>(row));
    }
    for (std::size_t i = 3; i < image.rgba.size(); i += 4) image.rgba[i] = 255;
    return image;
}

}  // namespace editor

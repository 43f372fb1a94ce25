#include "tests/bench/offscreen_window.h"

#include "editor/keys.h"
#include "editor/kit/fonts.h"
#include "editor/kit/theme.h"
#include "editor/screen.h"
#include "editor/seen_scene.h"
#include "editor/view/view_panel.h"

#include "tests/bench/must.h"

#include <glad/gl.h>
// The loader's header must come first.
#include <backends/imgui_impl_opengl3.h>

#include <cstdint>
#include <utility>

namespace tests {
namespace {

constexpr int frames_to_rest = 6;  // as the window draws after an event

// As editor/painter.cpp does it.
void put_texture(ImDrawData& data, unsigned texture) {
    const auto real = reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(texture));
    for (int i = 0; i < data.CmdListsCount; ++i) {
        for (auto& command : data.CmdLists[i]->CmdBuffer) {
            if (command.TextureId == editor::scene_picture()) command.TextureId = real;
        }
    }
}

}  // namespace

OffscreenWindow::ImGuiScope::ImGuiScope(engine::Viewport size) {
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.DisplaySize = {static_cast<float>(size.width), static_cast<float>(size.height)};
    io.DeltaTime = 1.0F / 60.0F;
    io.KeyMap[ImGuiKey_Enter] = editor::key::enter;
    io.KeyMap[ImGuiKey_A] = 'A';
    editor::load_fonts(*io.Fonts, 1.0F);
    editor::set_style(1.0F, editor::Theme::light);
    must(ImGui_ImplOpenGL3_Init("#version 330 core"),
         "Dear ImGui finds OpenGL (it looks for libGL.so.1)");
}

OffscreenWindow::ImGuiScope::~ImGuiScope() {
    ImGui_ImplOpenGL3_Shutdown();
    ImGui::DestroyContext();
}

OffscreenWindow::OffscreenWindow(std::shared_ptr<const model::Catalogue> tables,
                                 engine::Viewport size,
                                 int samples)
    : desk{std::move(tables)}, imgui_{size}, canvas_{size, 1}, samples_{samples} {}

OffscreenWindow::~OffscreenWindow() = default;

void OffscreenWindow::build_frame() {
    ImGui_ImplOpenGL3_NewFrame();
    input.apply(ImGui::GetIO());
    if (items_) items_->begin_frame();
    ImGui::NewFrame();
    editor::draw_screen(desk);
    ImGui::Render();
}

void OffscreenWindow::build_frames() {
    do {
        build_frame();
    } while (input.is_pending());
}

void OffscreenWindow::paint_scene() {
    const auto& now = editor::derived(desk);
    const auto& view = desk.ui.view;
    scene_texture_ =
        renderer_.draw(editor::seen_scene(desk), editor::emphasis_of(now, desk.ui.selection, view),
                       view.camera, view.viewport, {}, samples_);
}

void OffscreenWindow::paint_panels() {
    ImDrawData* data = ImGui::GetDrawData();
    put_texture(*data, scene_texture_);
    canvas_.begin();
    const ImVec4 ground = ImGui::ColorConvertU32ToFloat4(editor::colour::paper);
    glClearColor(ground.x, ground.y, ground.z, 1.0F);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(data);
    canvas_.finish();
}

void OffscreenWindow::finish() const { glFinish(); }

void OffscreenWindow::show() {
    build_frames();
    paint_scene();
    paint_panels();
    finish();
}

void OffscreenWindow::settle() {
    constexpr int most_frames = 20'000;
    build_frames();
    for (int i = 0; i < most_frames && desk.ui.goes_on; ++i) build_frame();
    must(!desk.ui.goes_on, "the window comes to rest");
    for (int i = 0; i < frames_to_rest; ++i) build_frame();
}

editor::ItemRecord OffscreenWindow::item(std::string_view name) {
    items_.emplace();
    build_frame();
    const auto at = items_->items().find(name);
    must(at != items_->items().end() && at->second.visible, std::string(name).c_str());
    auto record = at->second;
    items_.reset();
    return record;
}

void OffscreenWindow::click(std::string_view name) {
    const auto at = item(name);
    input.move(at.middle_x(), at.middle_y());
    input.button(0, true);
    input.button(0, false);
    build_frames();
    // Far enough in time that the next click is no double click.
    for (int i = 0; i < 20; ++i) build_frame();
}

void OffscreenWindow::type(std::string_view text) {
    for (const char letter : text) input.character(static_cast<unsigned char>(letter));
    build_frames();
}

void OffscreenWindow::press(int key, int modifier) {
    if (modifier != 0) input.key(modifier, true);
    input.key(key, true);
    input.key(key, false);
    if (modifier != 0) input.key(modifier, false);
}

}  // namespace tests

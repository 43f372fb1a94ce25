// The program's window without one: the same panels, input queue, scene and renderer as in
// `barwright edit`, drawn onto a canvas instead of a window's surface.
#pragma once

#include "editor/desk.h"
#include "editor/input.h"
#include "editor/kit/item_log.h"
#include "engine/render/gl_canvas.h"
#include "engine/render/renderer.h"

#include <imgui.h>

#include <memory>
#include <optional>
#include <string_view>

namespace tests {

class OffscreenWindow {
public:
    // Needs a current context of OpenGL, which outlives it.
    OffscreenWindow(std::shared_ptr<const model::Catalogue> tables,
                    engine::Viewport size,
                    int samples);
    ~OffscreenWindow();
    OffscreenWindow(const OffscreenWindow&) = delete;
    OffscreenWindow& operator=(const OffscreenWindow&) = delete;

    const std::optional<engine::Error>& fault() const { return renderer_.fault(); }

    editor::Desk desk;
    editor::InputQueue input;

    void build_frame();   // the panels, as of now
    void build_frames();  // until no input waits, as the window does before it paints
    void paint_scene();   // into its texture; nothing to do where it shows already
    void paint_panels();  // what was built last, with that texture in it
    void finish() const;  // waits until all that was painted is there
    void show();          // the three together: from what waits to the finished picture
    void settle();        // frames until nothing is left to do

    // Where an item is, by its name in the item log.
    editor::ItemRecord item(std::string_view name);
    void click(std::string_view name);
    void type(std::string_view text);
    void press(int key, int modifier = 0);

    std::uint64_t scenes_drawn() const { return renderer_.pictures_drawn(); }
    engine::Image picture() const { return canvas_.read_back(); }

private:
    // Dear ImGui's context with the program's fonts and look, and its way to OpenGL.
    struct ImGuiScope {
        explicit ImGuiScope(engine::Viewport size);
        ~ImGuiScope();
        ImGuiScope(const ImGuiScope&) = delete;
        ImGuiScope& operator=(const ImGuiScope&) = delete;
    };

    ImGuiScope imgui_;
    engine::Renderer renderer_;
    engine::GlCanvas canvas_;
    int samples_ = 4;
    unsigned scene_texture_ = 0;
    std::optional<editor::ItemLog> items_;  // while an item is looked for
};

}  // namespace tests

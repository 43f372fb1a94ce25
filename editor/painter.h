// Puts a frame of Dear ImGui, with the picture of the scene in it, onto the window's surface.
#pragma once

#include "editor/desk.h"
#include "editor/kit/theme.h"
#include "engine/render/image.h"
#include "engine/render/renderer.h"

struct GLFWwindow;

namespace editor {

// Between a current OpenGL context and its end; Dear ImGui's context must be there.
class Painter {
public:
    // `fonts_scale`: that at which the context's fonts have been loaded already; 0: they were not.
    Painter(GLFWwindow* window, int samples, float fonts_scale = 0.0F);
    ~Painter();
    Painter(const Painter&) = delete;
    Painter& operator=(const Painter&) = delete;

    void begin_frame();  // before the input queue is applied
    // Outside of a frame; loads the fonts anew when the scale has changed.
    void use_look(float scale, Theme theme);
    const std::optional<engine::Error>& fault() const { return renderer_.fault(); }
    void paint(Desk& desk);  // what was rendered last, without swapping the buffers
    engine::Image picture() const;

private:
    GLFWwindow* window_ = nullptr;
    int samples_ = 4;
    bool has_painted_ = false;
    float fonts_scale_ = 0.0F;
    float scale_ = 0.0F;
    Theme theme_ = Theme::light;
    engine::Renderer renderer_;
};

}  // namespace editor

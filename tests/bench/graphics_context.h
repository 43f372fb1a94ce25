// An OpenGL context without window or display, on a graphics card where there is one.
#pragma once

#include "engine/render/offscreen.h"
#include "engine/result.h"

#include <optional>
#include <string>

namespace tests {

class GraphicsContext {
public:
    // On the first of EGL's devices that is a graphics card and gives OpenGL 3.3; where there is
    // none, or `in_software` asks for none, as the program draws its pictures. Current on this
    // thread until it ends. Errors as of OffscreenContext::create.
    static engine::Result<GraphicsContext> create(bool in_software);

    ~GraphicsContext();
    GraphicsContext(GraphicsContext&& other) noexcept;
    GraphicsContext& operator=(GraphicsContext&&) = delete;

    // "GL_RENDERER ..., GL_VERSION ...; a device of EGL" or the like.
    std::string words() const;

private:
    GraphicsContext() = default;
    bool take_card();

    void* display_ = nullptr;  // EGLDisplay and EGLContext of a card; null without
    void* context_ = nullptr;
    std::optional<engine::OffscreenContext> offscreen_;
};

}  // namespace tests

// Draws a scene into a texture. This folder is the only user of OpenGL besides the window itself.
#pragma once

#include "engine/render/camera.h"
#include "engine/render/image.h"
#include "engine/render/scene.h"
#include "engine/result.h"

#include <cstdint>
#include <memory>
#include <optional>

namespace engine {

// Finds OpenGL's functions through the window's or the off-screen context's look-up
// (glfwGetProcAddress fits). Call once with a current context of OpenGL 3.3 core or later. Error:
// unknown_name when there is no such context.
using GlFunction = void (*)();
using GlLookUp = GlFunction (*)(const char* name);
Result<Done> load_gl(GlLookUp look_up);

// Needs a current context, the same at all calls and at its end. Leaves the viewport changed, and
// else OpenGL's state as it is in a fresh context.
class Renderer {
public:
    Renderer();  // load_gl must have been called
    ~Renderer();
    Renderer(Renderer&&) noexcept;
    Renderer& operator=(Renderer&&) noexcept;
    Renderer(const Renderer&) = delete;
    Renderer& operator=(const Renderer&) = delete;

    // Why nothing can be drawn: the driver refuses the shaders. None when all is well.
    const std::optional<Error>& fault() const;

    // The name of a texture of the viewport's size that shows the scene; its first row is the
    // lowest (show it with uv (0,1)-(1,0)). Draws only when something differs from the last call:
    // the scene's revision, emphasis, camera, size, style or samples. `samples` is 1 or less for
    // none, else capped to what the context can do. The name changes when the size does.
    unsigned draw(const SceneData& scene,
                  const SceneEmphasis& emphasis,
                  const Camera& camera,
                  Viewport viewport,
                  const SceneStyle& style = {},
                  int samples = 4);

    // What was drawn last.
    Image read_back() const;

    // How often a picture was really drawn.
    std::uint64_t pictures_drawn() const;

private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace engine

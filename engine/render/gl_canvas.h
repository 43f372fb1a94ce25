// A picture to draw into: colour and depth, smoothed by several samples a pixel, and the texture in
// which it ends.
#pragma once

#include "engine/render/camera.h"
#include "engine/render/gl_handle.h"
#include "engine/render/image.h"

namespace engine {

class GlCanvas {
public:
    GlCanvas() = default;
    GlCanvas(Viewport viewport, int samples);  // needs a context

    void begin() const;   // what is drawn from here on goes onto the canvas
    void finish() const;  // into the texture
    unsigned texture() const { return texture_.name(); }
    Image read_back() const;

private:
    Viewport viewport_;
    bool is_smoothed_ = false;
    GlTexture texture_;
    GlRenderbuffer depth_;
    GlRenderbuffer colour_;              // of the samples, where it is smoothed
    GlFramebuffer samples_framebuffer_;  // the same
    GlFramebuffer framebuffer_;          // of the texture
};

}  // namespace engine

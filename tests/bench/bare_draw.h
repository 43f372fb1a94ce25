// The least that it takes to draw a batch's triangles, to compare with: one shader, one instanced
// call, no outlines, no picking.
#pragma once

#include "engine/render/gl_canvas.h"
#include "engine/render/gl_handle.h"
#include "engine/render/scene.h"

#include <cstddef>

namespace tests {

class BareDraw {
public:
    // Each bar has holes of its own, so that one instance is the whole skeleton.
    BareDraw(const engine::SceneBatch& batch,
             const engine::Camera& camera,
             engine::Viewport viewport,
             int samples);

    void turn_and_draw();  // a little, as the window's view is turned; does not wait

private:
    void upload(const engine::SceneBatch& batch) const;

    engine::SceneBounds bounds_;
    engine::Camera camera_;
    engine::Viewport viewport_;
    engine::GlCanvas canvas_;
    engine::GlProgram program_;
    engine::GlBuffer vertices_ = engine::GlBuffer::create();
    engine::GlBuffer triangles_ = engine::GlBuffer::create();
    engine::GlVertexArray faces_ = engine::GlVertexArray::create();
    std::size_t index_count_ = 0;
};

}  // namespace tests

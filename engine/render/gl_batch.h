// A batch of a scene on the graphics card.
#pragma once

#include "engine/render/gl_handle.h"
#include "engine/render/scene.h"

#include <cstddef>
#include <vector>

namespace engine {

// The faces' and the lines' colour of one item.
struct ItemColours {
    Colour face;
    Colour line;
};

class GlBatch {
public:
    static GlBatch create();  // needs a context
    GlBatch() = default;

    void upload(const SceneBatch& batch);

    // One for each item of the batch that was uploaded.
    void upload_colours(const std::vector<ItemColours>& colours);

    // With a program in use whose attributes and `looks` (texture unit 0) are those of shaders.h.
    void draw_faces() const;
    void draw_lines() const;
    void draw_lines_of(std::size_t item) const;

private:
    void draw_lines_between(std::size_t first, std::size_t end) const;

    GlBuffer vertices_;
    GlBuffer vertex_items_;
    GlBuffer triangles_;
    GlBuffer edges_;
    GlBuffer edge_items_;
    GlBuffer colours_;
    GlTexture colour_table_;
    GlVertexArray faces_;
    GlVertexArray lines_;
    std::size_t index_count_ = 0;
    std::vector<std::size_t> edge_ends_;  // of each item, in edges
};

}  // namespace engine

#include "engine/render/gl_batch.h"

#include <glad/gl.h>

#include <algorithm>
#include <cstdint>

namespace engine {
namespace {

template <class T>
void fill(const GlBuffer& buffer, GLenum target, const std::vector<T>& data) {
    glBindBuffer(target, buffer.name());
    glBufferData(target, static_cast<GLsizeiptr>(data.size() * sizeof(T)),
                 data.empty() ? nullptr : data.data(), GL_STATIC_DRAW);
}

const void* at_byte(std::size_t offset) { return reinterpret_cast<const void*>(offset); }

void floats_at(GLuint location, GLsizei stride, std::size_t offset) {
    glEnableVertexAttribArray(location);
    glVertexAttribPointer(location, 3, GL_FLOAT, GL_FALSE, stride, at_byte(offset));
}

void number_at(GLuint location, std::size_t offset) {
    glEnableVertexAttribArray(location);
    glVertexAttribIPointer(location, 1, GL_UNSIGNED_INT,
                           static_cast<GLsizei>(sizeof(std::uint32_t)), at_byte(offset));
}

// Which item each of a run of things belongs to.
template <class Ends>
std::vector<std::uint32_t> item_numbers(std::size_t count, std::size_t items, Ends end_of) {
    std::vector<std::uint32_t> numbers(count);
    std::size_t first = 0;
    for (std::size_t i = 0; i < items; ++i) {
        const std::size_t end = std::min(count, static_cast<std::size_t>(end_of(i)));
        for (std::size_t k = first; k < end; ++k) numbers[k] = static_cast<std::uint32_t>(i);
        first = std::max(first, end);
    }
    return numbers;
}

}  // namespace

GlBatch GlBatch::create() {
    GlBatch made;
    made.vertices_ = GlBuffer::create();
    made.vertex_items_ = GlBuffer::create();
    made.triangles_ = GlBuffer::create();
    made.edges_ = GlBuffer::create();
    made.edge_items_ = GlBuffer::create();
    made.colours_ = GlBuffer::create();
    made.colour_table_ = GlTexture::create();
    made.faces_ = GlVertexArray::create();
    made.lines_ = GlVertexArray::create();
    return made;
}

void GlBatch::upload(const SceneBatch& batch) {
    const auto& mesh = batch.mesh;
    const auto& items = batch.items;
    glBindVertexArray(faces_.name());
    fill(triangles_, GL_ELEMENT_ARRAY_BUFFER, mesh.triangles);
    fill(vertices_, GL_ARRAY_BUFFER, mesh.vertices);
    constexpr auto stride = static_cast<GLsizei>(sizeof(MeshVertex));
    floats_at(0, stride, offsetof(MeshVertex, position));
    floats_at(1, stride, offsetof(MeshVertex, normal));
    fill(vertex_items_, GL_ARRAY_BUFFER,
         item_numbers(mesh.vertices.size(), items.size(),
                      [&items](std::size_t i) { return items[i].vertices_end; }));
    number_at(2, 0);
    index_count_ = mesh.triangles.size();

    edge_ends_.clear();
    for (const auto& item : items) edge_ends_.push_back(item.edges_end / 2);
    glBindVertexArray(lines_.name());
    for (const GLuint location : {0U, 1U, 2U}) glVertexAttribDivisor(location, 1);
    fill(edges_, GL_ARRAY_BUFFER, mesh.edges);
    fill(edge_items_, GL_ARRAY_BUFFER,
         item_numbers(mesh.edges.size() / 2, items.size(),
                      [this](std::size_t i) { return edge_ends_[i]; }));
    glBindVertexArray(0);
    glBindBuffer(GL_ARRAY_BUFFER, 0);
}

void GlBatch::upload_colours(const std::vector<ItemColours>& colours) {
    static_assert(sizeof(ItemColours) == 8, "two texels of four bytes");
    fill(colours_, GL_TEXTURE_BUFFER, colours);
    glBindTexture(GL_TEXTURE_BUFFER, colour_table_.name());
    glTexBuffer(GL_TEXTURE_BUFFER, GL_RGBA8, colours_.name());
    glBindTexture(GL_TEXTURE_BUFFER, 0);
    glBindBuffer(GL_TEXTURE_BUFFER, 0);
}

void GlBatch::draw_faces() const {
    if (index_count_ == 0) return;
    glBindTexture(GL_TEXTURE_BUFFER, colour_table_.name());
    glBindVertexArray(faces_.name());
    glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(index_count_), GL_UNSIGNED_INT, nullptr);
    glBindVertexArray(0);
    glBindTexture(GL_TEXTURE_BUFFER, 0);
}

void GlBatch::draw_lines() const {
    if (!edge_ends_.empty()) draw_lines_between(0, edge_ends_.back());
}

void GlBatch::draw_lines_of(std::size_t item) const {
    draw_lines_between(item == 0 ? 0 : edge_ends_[item - 1], edge_ends_[item]);
}

void GlBatch::draw_lines_between(std::size_t first, std::size_t end) const {
    if (first >= end) return;
    constexpr std::size_t point = 3 * sizeof(float);
    constexpr auto stride = static_cast<GLsizei>(2 * point);
    glBindTexture(GL_TEXTURE_BUFFER, colour_table_.name());
    glBindVertexArray(lines_.name());
    glBindBuffer(GL_ARRAY_BUFFER, edges_.name());
    floats_at(0, stride, first * 2 * point);
    floats_at(1, stride, first * 2 * point + point);
    glBindBuffer(GL_ARRAY_BUFFER, edge_items_.name());
    number_at(2, first * sizeof(std::uint32_t));
    glBindBuffer(GL_ARRAY_BUFFER, 0);
    glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, static_cast<GLsizei>(end - first));
    glBindVertexArray(0);
    glBindTexture(GL_TEXTURE_BUFFER, 0);
}

}  // namespace engine

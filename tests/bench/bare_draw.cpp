#include "tests/bench/bare_draw.h"

#include "engine/render/gl_program.h"

#include "tests/bench/must.h"

#include <glad/gl.h>
#include <glm/gtc/type_ptr.hpp>
#include <glm/mat4x4.hpp>

#include <cstddef>
#include <string_view>
#include <utility>
#include <vector>

namespace tests {
namespace {

constexpr std::string_view vertex_text = R"(
layout(location = 0) in vec3 position;
layout(location = 1) in vec3 normal;
uniform mat4 to_clip;
out float lit;
void main() {
    gl_Position = to_clip * vec4(position, 1.0);
    lit = 0.6 + 0.4 * max(dot(normal, vec3(0.36, -0.48, 0.8)), 0.0);
}
)";

constexpr std::string_view fragment_text = R"(
in float lit;
out vec4 pixel;
void main() { pixel = vec4(vec3(0.8) * lit, 1.0); }
)";

template <class T>
void fill(const engine::GlBuffer& buffer, GLenum target, const std::vector<T>& data) {
    glBindBuffer(target, buffer.name());
    glBufferData(target, static_cast<GLsizeiptr>(data.size() * sizeof(T)), data.data(),
                 GL_STATIC_DRAW);
}

void floats_at(GLuint location, std::size_t offset) {
    glEnableVertexAttribArray(location);
    glVertexAttribPointer(location, 3, GL_FLOAT, GL_FALSE,
                          static_cast<GLsizei>(sizeof(engine::MeshVertex)),
                          reinterpret_cast<const void*>(offset));
}

}  // namespace

BareDraw::BareDraw(const engine::SceneBatch& batch,
                   const engine::Camera& camera,
                   engine::Viewport viewport,
                   int samples)
    : bounds_{engine::bounds_of(batch)},
      camera_{camera},
      viewport_{viewport},
      canvas_{viewport, samples},
      index_count_{batch.mesh.triangles.size()} {
    auto program = engine::gl_program(vertex_text, fragment_text);
    must(program.has_value(), "the driver takes the bare shader");
    program_ = std::move(program).value();
    upload(batch);
}

void BareDraw::upload(const engine::SceneBatch& batch) const {
    glBindVertexArray(faces_.name());
    fill(triangles_, GL_ELEMENT_ARRAY_BUFFER, batch.mesh.triangles);
    fill(vertices_, GL_ARRAY_BUFFER, batch.mesh.vertices);
    floats_at(0, offsetof(engine::MeshVertex, position));
    floats_at(1, offsetof(engine::MeshVertex, normal));
    glBindVertexArray(0);
    glBindBuffer(GL_ARRAY_BUFFER, 0);
}

void BareDraw::turn_and_draw() {
    camera_ = engine::orbited(camera_, 0.011, 0.0);
    const glm::mat4 to_clip{engine::view_projection(camera_, bounds_, viewport_)};
    canvas_.begin();
    glClearColor(0.95F, 0.95F, 0.92F, 1.0F);
    glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
    glEnable(GL_DEPTH_TEST);
    glEnable(GL_CULL_FACE);
    glUseProgram(program_.name());
    glUniformMatrix4fv(glGetUniformLocation(program_.name(), "to_clip"), 1, GL_FALSE,
                       glm::value_ptr(to_clip));
    glBindVertexArray(faces_.name());
    glDrawElementsInstanced(GL_TRIANGLES, static_cast<GLsizei>(index_count_), GL_UNSIGNED_INT,
                            nullptr, 1);
    glBindVertexArray(0);
    glUseProgram(0);
    glDisable(GL_CULL_FACE);
    glDisable(GL_DEPTH_TEST);
    canvas_.finish();
}

}  // namespace tests

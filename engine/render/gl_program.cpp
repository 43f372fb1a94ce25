#include "engine/render/gl_program.h"

#include <glad/gl.h>

#include <array>
#include <string>

namespace engine {
namespace {

struct ShaderKind {
    static void destroy(unsigned name) { glDeleteShader(name); }
};
using Shader = GlHandle<ShaderKind>;

using LogReader = void (*)(GLuint, GLsizei, GLsizei*, GLchar*);

Error refused(LogReader read_log, GLuint name) {
    std::array<char, 1024> log{};
    GLsizei length = 0;
    read_log(name, static_cast<GLsizei>(log.size()), &length, log.data());
    return {ErrorCode::invalid_value, "the graphics driver",
            "it refuses a shader: " + std::string(log.data(), static_cast<std::size_t>(length))};
}

Result<Shader> compiled(GLenum kind, std::string_view text) {
    constexpr std::string_view version = "#version 330 core\n";
    auto shader = Shader::adopt(glCreateShader(kind));
    const std::array<const GLchar*, 2> texts{version.data(), text.data()};
    const std::array<GLint, 2> lengths{static_cast<GLint>(version.size()),
                                       static_cast<GLint>(text.size())};
    glShaderSource(shader.name(), 2, texts.data(), lengths.data());
    glCompileShader(shader.name());
    GLint is_fine = GL_FALSE;
    glGetShaderiv(shader.name(), GL_COMPILE_STATUS, &is_fine);
    if (is_fine != GL_TRUE) return refused(glGetShaderInfoLog, shader.name());
    return Result<Shader>{std::move(shader)};
}

}  // namespace

Result<GlProgram> gl_program(std::string_view vertex, std::string_view fragment) {
    const auto first = compiled(GL_VERTEX_SHADER, vertex);
    if (!first) return first.error();
    const auto second = compiled(GL_FRAGMENT_SHADER, fragment);
    if (!second) return second.error();
    auto program = GlProgram::adopt(glCreateProgram());
    glAttachShader(program.name(), first->name());
    glAttachShader(program.name(), second->name());
    glLinkProgram(program.name());
    GLint is_fine = GL_FALSE;
    glGetProgramiv(program.name(), GL_LINK_STATUS, &is_fine);
    if (is_fine != GL_TRUE) return refused(glGetProgramInfoLog, program.name());
    return Result<GlProgram>{std::move(program)};
}

}  // namespace engine

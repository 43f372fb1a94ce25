#include "engine/render/gl_handle.h"

#include <glad/gl.h>

namespace engine {

unsigned GlBufferKind::create() {
    GLuint name = 0;
    glGenBuffers(1, &name);
    return name;
}
void GlBufferKind::destroy(unsigned name) { glDeleteBuffers(1, &name); }

unsigned GlVertexArrayKind::create() {
    GLuint name = 0;
    glGenVertexArrays(1, &name);
    return name;
}
void GlVertexArrayKind::destroy(unsigned name) { glDeleteVertexArrays(1, &name); }

unsigned GlTextureKind::create() {
    GLuint name = 0;
    glGenTextures(1, &name);
    return name;
}
void GlTextureKind::destroy(unsigned name) { glDeleteTextures(1, &name); }

unsigned GlFramebufferKind::create() {
    GLuint name = 0;
    glGenFramebuffers(1, &name);
    return name;
}
void GlFramebufferKind::destroy(unsigned name) { glDeleteFramebuffers(1, &name); }

unsigned GlRenderbufferKind::create() {
    GLuint name = 0;
    glGenRenderbuffers(1, &name);
    return name;
}
void GlRenderbufferKind::destroy(unsigned name) { glDeleteRenderbuffers(1, &name); }

void GlProgramKind::destroy(unsigned name) { glDeleteProgram(name); }

}  // namespace engine

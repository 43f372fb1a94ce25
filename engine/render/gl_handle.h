// Owns one OpenGL object name. Move-only; a moved-from handle holds 0, which OpenGL ignores.
#pragma once

#include <utility>

namespace engine {

template <class Kind>  // Kind has: static unsigned create(); static void destroy(unsigned)
class GlHandle {
public:
    GlHandle() = default;  // empty: makes no OpenGL call, so it may exist before there is a context

    static GlHandle create() { return GlHandle{Kind::create()}; }

    // For objects that are made from something: a shader of a kind, a program of shaders.
    static GlHandle adopt(unsigned name) { return GlHandle{name}; }

    GlHandle(GlHandle&& other) noexcept : name_{std::exchange(other.name_, 0U)} {}

    GlHandle& operator=(GlHandle&& other) noexcept {
        std::swap(name_, other.name_);
        return *this;
    }

    GlHandle(const GlHandle&) = delete;
    GlHandle& operator=(const GlHandle&) = delete;

    ~GlHandle() {
        if (name_ != 0U) Kind::destroy(name_);
    }

    unsigned name() const { return name_; }
    explicit operator bool() const { return name_ != 0U; }

private:
    explicit GlHandle(unsigned name) : name_{name} {}

    unsigned name_ = 0U;
};

// Defined in gl_handle.cpp, so that users of the handles need no OpenGL header.
struct GlBufferKind {
    static unsigned create();
    static void destroy(unsigned name);
};
struct GlVertexArrayKind {
    static unsigned create();
    static void destroy(unsigned name);
};
struct GlTextureKind {
    static unsigned create();
    static void destroy(unsigned name);
};
struct GlFramebufferKind {
    static unsigned create();
    static void destroy(unsigned name);
};
struct GlRenderbufferKind {
    static unsigned create();
    static void destroy(unsigned name);
};
struct GlProgramKind {
    static void destroy(unsigned name);
};

using GlBuffer = GlHandle<GlBufferKind>;
using GlVertexArray = GlHandle<GlVertexArrayKind>;
using GlTexture = GlHandle<GlTextureKind>;
using GlFramebuffer = GlHandle<GlFramebufferKind>;
using GlRenderbuffer = GlHandle<GlRenderbufferKind>;
using GlProgram = GlHandle<GlProgramKind>;

}  // namespace engine

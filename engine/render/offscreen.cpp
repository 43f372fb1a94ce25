#include "engine/render/offscreen.h"

#include "engine/render/renderer.h"

#include <EGL/egl.h>
#include <EGL/eglext.h>

#include <array>
#include <cstring>
#include <utility>

namespace engine {
namespace {

Error no_context(const std::string& what) {
    return {ErrorCode::unknown_name, "pictures without a window",
            what + "; install the Mesa drivers (package libgl1-mesa-dri)"};
}

// The client extensions are asked for without a display.
bool has_surfaceless_platform() {
    const char* extensions = eglQueryString(EGL_NO_DISPLAY, EGL_EXTENSIONS);
    return extensions != nullptr && std::strstr(extensions, "EGL_EXT_platform_base") != nullptr &&
           std::strstr(extensions, "EGL_MESA_platform_surfaceless") != nullptr;
}

EGLDisplay surfaceless_display() {
    if (!has_surfaceless_platform()) return EGL_NO_DISPLAY;
    const auto get_platform_display = reinterpret_cast<PFNEGLGETPLATFORMDISPLAYEXTPROC>(
        eglGetProcAddress("eglGetPlatformDisplayEXT"));
    if (get_platform_display == nullptr) return EGL_NO_DISPLAY;
    return get_platform_display(EGL_PLATFORM_SURFACELESS_MESA, nullptr, nullptr);
}

EGLContext core_context(EGLDisplay display) {
    constexpr std::array<EGLint, 7> wanted{EGL_CONTEXT_MAJOR_VERSION,
                                           3,
                                           EGL_CONTEXT_MINOR_VERSION,
                                           3,
                                           EGL_CONTEXT_OPENGL_PROFILE_MASK,
                                           EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT,
                                           EGL_NONE};
    if (eglBindAPI(EGL_OPENGL_API) != EGL_TRUE) return nullptr;
    return eglCreateContext(display, nullptr, nullptr, wanted.data());
}

}  // namespace

Result<OffscreenContext> OffscreenContext::create() {
    EGLDisplay display = surfaceless_display();
    if (display == nullptr) return no_context("this system has no EGL without a display");
    if (eglInitialize(display, nullptr, nullptr) != EGL_TRUE)
        return no_context("EGL does not start");
    EGLContext context = core_context(display);
    OffscreenContext made{display, context};
    if (context == nullptr) return no_context("EGL gives no OpenGL 3.3 context");
    if (eglMakeCurrent(display, nullptr, nullptr, context) != EGL_TRUE)
        return no_context("EGL cannot use its OpenGL context");
    const auto loaded = load_gl(eglGetProcAddress);
    if (!loaded) return loaded.error();
    return Result<OffscreenContext>{std::move(made)};
}

OffscreenContext::~OffscreenContext() {
    if (display_ == nullptr) return;
    eglMakeCurrent(display_, nullptr, nullptr, nullptr);
    if (context_ != nullptr) eglDestroyContext(display_, context_);
    eglTerminate(display_);
}

OffscreenContext::OffscreenContext(OffscreenContext&& other) noexcept
    : display_{std::exchange(other.display_, nullptr)},
      context_{std::exchange(other.context_, nullptr)} {}

OffscreenContext& OffscreenContext::operator=(OffscreenContext&& other) noexcept {
    std::swap(display_, other.display_);
    std::swap(context_, other.context_);
    return *this;
}

}  // namespace engine

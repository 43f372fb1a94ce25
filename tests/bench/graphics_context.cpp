#include "tests/bench/graphics_context.h"

#include "engine/render/renderer.h"

#include <glad/gl.h>
// The loader's header must come first.
#include <EGL/egl.h>
#include <EGL/eglext.h>

#include <array>
#include <cstring>
#include <utility>
#include <vector>

namespace tests {
namespace {

bool has(const char* extensions, const char* name) {
    return extensions != nullptr && std::strstr(extensions, name) != nullptr;
}

template <class Function>
Function egl_function(const char* name) {
    return reinterpret_cast<Function>(eglGetProcAddress(name));
}

// Mesa lists its drawing in software as a device too.
bool is_card(EGLDeviceEXT device) {
    const auto words_of = egl_function<PFNEGLQUERYDEVICESTRINGEXTPROC>("eglQueryDeviceStringEXT");
    return words_of != nullptr &&
           !has(words_of(device, EGL_EXTENSIONS), "EGL_MESA_device_software");
}

std::vector<EGLDeviceEXT> cards() {
    const char* known = eglQueryString(EGL_NO_DISPLAY, EGL_EXTENSIONS);
    const auto list = egl_function<PFNEGLQUERYDEVICESEXTPROC>("eglQueryDevicesEXT");
    const bool can_list =
        has(known, "EGL_EXT_device_base") || has(known, "EGL_EXT_device_enumeration");
    if (!can_list || list == nullptr) return {};
    std::array<EGLDeviceEXT, 32> devices{};
    EGLint count = 0;
    if (list(static_cast<EGLint>(devices.size()), devices.data(), &count) != EGL_TRUE) return {};
    std::vector<EGLDeviceEXT> found(devices.begin(), devices.begin() + count);
    std::erase_if(found, [](EGLDeviceEXT device) { return !is_card(device); });
    return found;
}

EGLDisplay started_display(EGLDeviceEXT device) {
    const auto display_of =
        egl_function<PFNEGLGETPLATFORMDISPLAYEXTPROC>("eglGetPlatformDisplayEXT");
    if (display_of == nullptr) return EGL_NO_DISPLAY;
    EGLDisplay display = display_of(EGL_PLATFORM_DEVICE_EXT, device, nullptr);
    if (display == EGL_NO_DISPLAY || eglInitialize(display, nullptr, nullptr) != EGL_TRUE)
        return EGL_NO_DISPLAY;
    return display;
}

EGLContext core_context(EGLDisplay display) {
    constexpr std::array<EGLint, 3> drawable{EGL_RENDERABLE_TYPE, EGL_OPENGL_BIT, EGL_NONE};
    constexpr std::array<EGLint, 7> wanted{EGL_CONTEXT_MAJOR_VERSION,
                                           3,
                                           EGL_CONTEXT_MINOR_VERSION,
                                           3,
                                           EGL_CONTEXT_OPENGL_PROFILE_MASK,
                                           EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT,
                                           EGL_NONE};
    EGLConfig config = nullptr;  // none is needed where there is EGL_KHR_no_config_context
    EGLint count = 0;
    eglChooseConfig(display, drawable.data(), &config, 1, &count);
    if (eglBindAPI(EGL_OPENGL_API) != EGL_TRUE) return EGL_NO_CONTEXT;
    return eglCreateContext(display, count > 0 ? config : nullptr, EGL_NO_CONTEXT, wanted.data());
}

bool is_current(EGLDisplay display, EGLContext context) {
    return context != EGL_NO_CONTEXT &&
           eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, context) == EGL_TRUE &&
           engine::load_gl(eglGetProcAddress).has_value();
}

void put_away(EGLDisplay display, EGLContext context) {
    eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
    if (context != EGL_NO_CONTEXT) eglDestroyContext(display, context);
    eglTerminate(display);
}

std::string gl_words(GLenum name) {
    const auto* words = glGetString(name);
    return words == nullptr ? "not told" : reinterpret_cast<const char*>(words);
}

}  // namespace

engine::Result<GraphicsContext> GraphicsContext::create(bool in_software) {
    GraphicsContext made;
    if (!in_software && made.take_card()) return engine::Result<GraphicsContext>{std::move(made)};
    auto offscreen = engine::OffscreenContext::create();
    if (!offscreen) return offscreen.error();
    made.offscreen_ = std::move(offscreen).value();
    return engine::Result<GraphicsContext>{std::move(made)};
}

bool GraphicsContext::take_card() {
    for (EGLDeviceEXT card : cards()) {
        EGLDisplay display = started_display(card);
        if (display == EGL_NO_DISPLAY) continue;
        EGLContext context = core_context(display);
        if (is_current(display, context)) {
            display_ = display;
            context_ = context;
            return true;
        }
        put_away(display, context);
    }
    return false;
}

GraphicsContext::~GraphicsContext() {
    if (display_ != nullptr) put_away(display_, context_);
}

GraphicsContext::GraphicsContext(GraphicsContext&& other) noexcept
    : display_{std::exchange(other.display_, nullptr)},
      context_{std::exchange(other.context_, nullptr)},
      offscreen_{std::move(other.offscreen_)} {}

std::string GraphicsContext::words() const {
    return "GL_RENDERER " + gl_words(GL_RENDERER) + ", GL_VERSION " + gl_words(GL_VERSION) +
           (display_ != nullptr ? "; a device of EGL" : "; EGL without a surface, as for pictures");
}

}  // namespace tests

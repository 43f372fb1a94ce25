// An OpenGL context without window or display (EGL, surfaceless), for pictures on paper and tests.
#pragma once

#include "engine/result.h"

namespace engine {

class OffscreenContext {
public:
    // Current on this thread until it ends, with OpenGL's functions loaded. Error: unknown_name
    // when the system offers no such context.
    static Result<OffscreenContext> create();

    ~OffscreenContext();
    OffscreenContext(OffscreenContext&& other) noexcept;
    OffscreenContext& operator=(OffscreenContext&& other) noexcept;
    OffscreenContext(const OffscreenContext&) = delete;
    OffscreenContext& operator=(const OffscreenContext&) = delete;

private:
    OffscreenContext(void* display, void* context) : display_{display}, context_{context} {}

    void* display_ = nullptr;  // EGLDisplay
    void* context_ = nullptr;  // EGLContext
};

}  // namespace engine

// Shaders compiled and linked.
#pragma once

#include "engine/render/gl_handle.h"
#include "engine/result.h"

#include <string_view>

namespace engine {

// Both texts are GLSL 3.30 without the version line. Error: invalid_value with the driver's words.
Result<GlProgram> gl_program(std::string_view vertex, std::string_view fragment);

}  // namespace engine

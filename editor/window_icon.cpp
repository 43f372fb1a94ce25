#include "editor/window_icon.h"

#include <GLFW/glfw3.h>
#include <stb_image.h>

#include <memory>
#include <span>
#include <vector>

// PNG files, defined by embedded_icons.S.
extern "C" {
extern const unsigned char barwright_icon_32[];
extern const unsigned char barwright_icon_32_end[];
extern const unsigned char barwright_icon_48[];
extern const unsigned char barwright_icon_48_end[];
extern const unsigned char barwright_icon_128[];
extern const unsigned char barwright_icon_128_end[];
}

namespace editor {
namespace {

struct PixelsDeleter {
    void operator()(unsigned char* pixels) const { stbi_image_free(pixels); }
};
using Pixels = std::unique_ptr<unsigned char, PixelsDeleter>;

using Bytes = std::span<const unsigned char>;

}  // namespace

void set_window_icon(GLFWwindow* window) {
    const Bytes files[] = {Bytes(barwright_icon_32, barwright_icon_32_end),
                           Bytes(barwright_icon_48, barwright_icon_48_end),
                           Bytes(barwright_icon_128, barwright_icon_128_end)};
    std::vector<Pixels> kept;
    std::vector<GLFWimage> images;
    for (const auto& file : files) {
        GLFWimage image{};
        kept.emplace_back(stbi_load_from_memory(file.data(), static_cast<int>(file.size()),
                                                &image.width, &image.height, nullptr,
                                                STBI_rgb_alpha));
        image.pixels = kept.back().get();
        if (image.pixels != nullptr) images.push_back(image);
    }
    glfwSetWindowIcon(window, static_cast<int>(images.size()), images.data());
}

}  // namespace editor
